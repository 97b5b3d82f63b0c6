package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Refused;

class BenchSheetTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void write() {
        file = folder.resolve("bench.xlsx");
        BenchSheet.write(
                file,
                "Bench",
                LocalDate.of(2026, 3, 14),
                List.of(
                        new BenchSheet.Row(
                                "L0042-001", "Kestrel KX-55A1, 55 in", "horizontal_lines", "", 70, 17, "B3", null),
                        new BenchSheet.Row("L0042-002", "=cmd()", "untested", "row_drive", null, 18, null, "board")),
                new BenchSheet.Choices(
                        List.of("row_drive", "unknown"), List.of("contact_mask", "none"), List.of("A", "B", "C")),
                "A4");
    }

    private void set(int row, BenchSheet.Field column, Object value) throws Exception {
        XSSFWorkbook book;
        try (FileInputStream in = new FileInputStream(file.toFile())) {
            book = new XSSFWorkbook(in);
        }
        XSSFSheet sheet = book.getSheet("Bench");
        var cell = sheet.getRow(row).getCell(column.ordinal());
        if (value instanceof Double d) {
            cell.setCellValue(d);
        } else if (value instanceof String text && text.startsWith("=")) {
            cell.setCellFormula(text.substring(1)); // not worked out
        } else {
            cell.setCellValue((String) value);
        }
        try (FileOutputStream out = new FileOutputStream(file.toFile())) {
            book.write(out);
        }
        book.close();
    }

    @Test
    void whatIsWrittenInComesBackWithTheUnitAndTheEntryItRestsOn() throws Exception {
        set(3, BenchSheet.Field.FAULT, "row_drive");
        set(3, BenchSheet.Field.FIX_MINUTES, 41.5);
        set(3, BenchSheet.Field.PASSED, "yes");
        List<BenchSheetReader.Filled> rows = BenchSheetReader.read(file);
        assertThat(rows).hasSize(2);
        BenchSheetReader.Filled first = rows.get(0);
        assertThat(first.row()).isEqualTo(4);
        assertThat(first.unit()).isEqualTo("L0042-001");
        assertThat(first.asOfEntry()).isEqualTo(17);
        assertThat(first.fault()).isEqualTo("row_drive");
        assertThat(first.fixMinutes()).isEqualTo("41.5");
        assertThat(first.passed()).isEqualTo("yes");
        assertThat(first.place()).isEqualTo("B3");
        assertThat(first.hasTurn()).isTrue();
        assertThat(rows.get(1).hasTurn()).isFalse();
        assertThat(rows.get(1).waitingFor()).isEqualTo("board");
    }

    @Test
    void knownCellsAreLockedAndCodesAreChosenFromLists() throws Exception {
        try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
            XSSFSheet sheet = book.getSheet("Bench");
            assertThat(sheet.getProtect()).isTrue();
            for (BenchSheet.Field c : BenchSheet.Field.values()) {
                assertThat(sheet.getRow(3).getCell(c.ordinal()).getCellStyle().getLocked())
                        .as(c.heading)
                        .isEqualTo(c.locked);
            }
            assertThat(sheet.getDataValidations()).hasSize(10);
        }
    }

    @Test
    void aFormulaThatNobodyWorkedOutIsNoZero() throws Exception {
        set(3, BenchSheet.Field.WAITING, "=1+1");
        assertThatThrownBy(() -> BenchSheetReader.read(file))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is a formula without a stored value");
    }

    @Test
    void anotherFileIsRefusedByName() throws Exception {
        Path other = folder.resolve("other.xlsx");
        Files.writeString(other, "no workbook");
        assertThatThrownBy(() -> BenchSheetReader.read(other))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("other.xlsx");
    }

    /** Packed 40 times smaller, which a packing library takes for ordinary. */
    @Test
    void aSheetThatSwellsWhenUnpackedIsRefusedBeforeItIsRead() throws Exception {
        Path bomb = folder.resolve("bomb.xlsx");
        byte[] block = new byte[3_000];
        Random random = new Random(1);
        for (int i = 0; i < block.length; i++) {
            block[i] = (byte) ('a' + random.nextInt(26));
        }
        try (ZipFile from = new ZipFile(file.toFile());
                ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(bomb))) {
            for (ZipEntry entry : Collections.list(from.entries())) {
                to.putNextEntry(new ZipEntry(entry.getName()));
                from.getInputStream(entry).transferTo(to);
                if (entry.getName().equals("xl/worksheets/sheet1.xml")) {
                    to.write("<!--".getBytes(StandardCharsets.US_ASCII));
                    for (int i = 0; i < 20_000_000 / block.length; i++) {
                        for (int j = 0; j < 20; j++) {
                            block[random.nextInt(block.length)] = (byte) ('a' + random.nextInt(26));
                        }
                        to.write(block);
                    }
                    to.write("-->".getBytes(StandardCharsets.US_ASCII));
                }
            }
        }
        assertThat(Files.size(bomb)).isBetween(200_000L, 2_000_000L);

        assertThatThrownBy(() -> BenchSheetReader.read(bomb))
                .isInstanceOf(Refused.class)
                .hasMessage("bomb.xlsx is no bench sheet: too large for one when unpacked");
    }

    @Test
    void aSheetOfAWholeLargeLotIsRead() {
        List<BenchSheet.Row> rows = IntStream.range(0, 2_000)
                .mapToObj(i -> new BenchSheet.Row(
                        "L0042-" + i, "Kestrel KX-55A" + i + ", 55 in", "untested", "row_drive", 70, 17, "B" + i, null))
                .toList();
        BenchSheet.write(
                file,
                "Bench",
                LocalDate.of(2026, 3, 14),
                rows,
                new BenchSheet.Choices(List.of("row_drive"), List.of("none"), List.of("A")),
                "A4");
        assertThat(BenchSheetReader.read(file)).hasSize(2_000);
    }
}
