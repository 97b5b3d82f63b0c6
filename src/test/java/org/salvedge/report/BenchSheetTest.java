package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
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
}
