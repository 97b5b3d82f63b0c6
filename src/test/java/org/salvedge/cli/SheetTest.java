package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench sheet there and back. */
class SheetTest {
    private static final int HEADER = 2;

    @TempDir
    Path folder;

    private TestShop shop;
    private Path sheet;

    @BeforeEach
    void write() {
        shop = TestShop.withLot(folder);
        shop.run("place", "L0042-002", "B3");
        assertThat(shop.run("sheet")).as(shop.err()).isZero();
        sheet = folder.resolve("reports/bench-2026-03-14.xlsx");
        assertThat(shop.out()).contains("Written to " + sheet);
    }

    /** Fills cells of a set's row by their headings. */
    static void fill(Path file, String unit, Map<String, Object> cells) throws Exception {
        fillAll(file, Map.of(unit, cells));
    }

    /** The same for several sets. */
    static void fillAll(Path file, Map<String, Map<String, Object>> rows) throws Exception {
        XSSFWorkbook book;
        try (FileInputStream in = new FileInputStream(file.toFile())) {
            book = new XSSFWorkbook(in);
        }
        XSSFSheet bench = book.getSheet("Bench");
        XSSFRow heading = bench.getRow(HEADER);
        for (int r = HEADER + 1; r <= bench.getLastRowNum(); r++) {
            XSSFRow row = bench.getRow(r);
            rows.getOrDefault(row.getCell(0).getStringCellValue(), Map.of()).forEach((name, value) -> {
                int at = IntStream.range(0, heading.getLastCellNum())
                        .filter(c -> heading.getCell(c).getStringCellValue().equals(name))
                        .findFirst()
                        .orElseThrow();
                if (value instanceof Number number) {
                    row.getCell(at).setCellValue(number.doubleValue());
                } else {
                    row.getCell(at).setCellValue(String.valueOf(value));
                }
            });
        }
        try (FileOutputStream out = new FileOutputStream(file.toFile())) {
            book.write(out);
        }
        book.close();
    }

    private void turn(String unit) throws Exception {
        fill(
                sheet,
                unit,
                Map.of(
                        "fault",
                        "row_drive",
                        "fix",
                        "contact_mask",
                        "diagnosis min",
                        8,
                        "fix min",
                        41.5,
                        "passed",
                        "yes",
                        "grade",
                        "b",
                        "safety tested",
                        "yes"));
    }

    @Test
    void whatWasFilledInIsRecordedOnceAndTheRestIsLeft() throws Exception {
        turn("L0042-001");
        fill(sheet, "L0042-002", Map.of("place", "B4"));
        assertThat(shop.run("sheet", "--return", sheet.toString(), "--technician", "Ada"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out())
                .contains("L0042-001 row_drive, contact_mask, 49.5 min, passed, grade B, safety tested, by Ada")
                .contains("2 entries from 3 rows");
        assertThat(shop.err()).contains("L0042-001: before it is sold: owner_data_reset");
        shop.run("show", "L0042-002");
        assertThat(shop.out()).contains("at B4");
        // Read a second time, it brings nothing new.
        assertThat(shop.run("sheet", "--return", sheet.toString())).isZero();
        assertThat(shop.out()).contains("Nothing new");
        assertThat(shop.run("audit")).isZero();
    }

    @Test
    void whatWasRecordedMeanwhileIsListedAndNotOverwritten() throws Exception {
        shop.run("attempt", "L0042-001", "--fault", "backlight", "--fix", "none");
        shop.run("place", "L0042-002", "C1");
        turn("L0042-001");
        turn("L0042-003");
        fill(sheet, "L0042-002", Map.of("place", "B4"));
        assertThat(shop.run("sheet", "--return", sheet.toString())).isEqualTo(1);
        assertThat(shop.out()).contains("1 entry from 3 rows").contains("L0042-003 row_drive");
        assertThat(shop.err())
                .contains("left alone: row 4, L0042-001: recorded meanwhile")
                .contains("backlight")
                .contains("place: the sheet says \"B4\", the record meanwhile \"C1\"");
    }

    @Test
    void aSheetWithABadCellChangesNothingAndNamesTheCell() throws Exception {
        turn("L0042-001");
        fill(sheet, "L0042-002", Map.of("fault", "rowdy", "fix", "none", "fix min", "ten", "grade", "B"));
        fill(sheet, "L0042-003", Map.of("note", "looked at it"));
        assertThat(shop.run("sheet", "--return", sheet.toString())).isEqualTo(3);
        assertThat(shop.err())
                .contains("row 5, column \"fault\": \"rowdy\" is not a code")
                .contains("column \"fix min\": \"ten\" is not a number")
                .contains("row 6, column \"fault\": is missing");
        shop.run("show", "L0042-001");
        assertThat(shop.out()).doesNotContain("grade B").doesNotContain("safety tested");
    }

    @Test
    void aSheetThatMayBeFilledInIsNeverWrittenOver() {
        assertThat(shop.run("sheet")).isZero();
        assertThat(shop.out()).contains("bench-2026-03-14-2.xlsx");
        assertThat(shop.run("sheet", "--out", sheet.toString())).isEqualTo(3);
        assertThat(shop.err()).contains("is there already");
    }

    @Test
    void labelsOfALotAndNothingToLabel() {
        assertThat(shop.run("sheet", "L0042", "--labels")).as(shop.err()).isZero();
        assertThat(folder.resolve("reports/labels-L0042.xlsx")).exists();
        for (String unit : new String[] {"L0042-001", "L0042-002", "L0042-003"}) {
            shop.run("recycle", unit);
        }
        assertThat(shop.run("sheet")).isEqualTo(3);
        assertThat(shop.err()).contains("no set is on the bench");
    }

    @Test
    void setsAreNamedWhereOnlySomeAreWanted() {
        assertThat(shop.run("sheet", "003", "--out", "one.xlsx")).isZero();
        assertThat(org.salvedge.report.BenchSheetReader.read(folder.resolve("one.xlsx")))
                .hasSize(1);
        assertThat(shop.run("sheet", "--hours", "1", "--out", "hour.xlsx"))
                .as(shop.err())
                .isZero();
        assertThat(org.salvedge.report.BenchSheetReader.read(folder.resolve("hour.xlsx")))
                .hasSizeBetween(1, 2);
    }
}
