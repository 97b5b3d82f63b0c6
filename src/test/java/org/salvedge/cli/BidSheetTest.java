package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bid sheet's formulas against the program's own answers, worked out by two spreadsheet engines. */
class BidSheetTest {
    private static final String[] TERMS = {"--premium-pct", "12", "--freight", "30"};

    @TempDir
    static Path folder;

    private static TestShop shop = new TestShop(Path.of(""));

    @BeforeAll
    static void open() throws IOException {
        shop = new TestShop(folder);
        shop.run("init", "--zone", "Europe/Berlin");
        Files.writeString(folder.resolve("list.csv"), """
                Maker,Model,Size,Condition,Qty
                Kestrel,KX-55A,55,horizontal lines,16
                "=HYPERLINK(""x"")",=1+1,43,untested,9
                """);
        assertThat(shop.run(args("--xlsx", "bid.xlsx", "--price", "250", "--confidence", "0.55")))
                .as(shop.err())
                .isZero();
    }

    private static String[] args(String... more) {
        List<String> args = new ArrayList<>(List.of("worth", "list.csv", "--draws", "4000"));
        if (!List.of(more).contains("--freight")) {
            args.addAll(List.of(TERMS));
        }
        args.addAll(List.of(more));
        return args.toArray(String[]::new);
    }

    private static JsonNode answer(String... more) throws IOException {
        List<String> args = new ArrayList<>(List.of(args(more)));
        args.addAll(List.of("--format", "json"));
        assertThat(shop.run(args.toArray(String[]::new))).as(shop.err()).isZero();
        return new ObjectMapper().readTree(shop.out());
    }

    private static Cell cell(XSSFWorkbook book, String name) {
        CellReference at = new CellReference(book.getName(name).getRefersToFormula());
        return book.getSheet(at.getSheetName()).getRow(at.getRow()).getCell(at.getCol());
    }

    /** With cells changed, worked out by POI. */
    private static XSSFWorkbook changed(Map<String, Double> changes) throws IOException {
        XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(folder.resolve("bid.xlsx")));
        changes.forEach((name, value) -> cell(book, name).setCellValue(value));
        book.getCreationHelper().createFormulaEvaluator().evaluateAll();
        return book;
    }

    private static void agrees(XSSFWorkbook book, JsonNode answer) {
        assertThat(answer.get("highest_bid").get("price").isNull()).isFalse();
        assertThat(cell(book, "highest_bid").getNumericCellValue())
                .as("highest bid")
                .isCloseTo(answer.get("highest_bid").get("price").doubleValue(), within(1e-6));
        assertThat(cell(book, "break_even_bid").getNumericCellValue())
                .as("break-even bid")
                .isCloseTo(answer.get("break_even_bid").get("price").doubleValue(), within(1e-6));
        JsonNode at = answer.get("at_price");
        assertThat(cell(book, "profit").getNumericCellValue())
                .isCloseTo(at.get("profit_mean").doubleValue(), within(1e-6));
        assertThat(cell(book, "loss").getNumericCellValue())
                .isCloseTo(at.get("p_loss").doubleValue(), within(0.003));
        double sd = answer.get("recovery").get("sd").doubleValue();
        for (String p : List.of("10", "50", "90")) {
            assertThat(cell(book, "profit_" + p).getNumericCellValue())
                    .isCloseTo(at.get("p" + p).doubleValue(), within(0.01 * sd));
        }
    }

    @Test
    void formulasGiveTheProgramsOwnAnswer() throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(folder.resolve("bid.xlsx")))) {
            agrees(book, answer("--price", "250", "--confidence", "0.55"));
        }
    }

    @Test
    void changedCellsGiveTheAnswerOfChangedOptions() throws IOException {
        try (XSSFWorkbook book =
                changed(Map.of("price", 410.0, "target", 0.1, "confidence", 0.6, "premium", 0.175, "freight", 12.5))) {
            agrees(
                    book,
                    answer(
                            "--price",
                            "410",
                            "--target-return",
                            "0.1",
                            "--confidence",
                            "0.6",
                            "--premium-pct",
                            "17.5",
                            "--freight",
                            "12.50"));
        }
    }

    /** Another labour rate moves all outcomes by the mean hours: near what the program says. */
    @Test
    void anotherLabourRateComesNear() throws IOException {
        try (XSSFWorkbook book = changed(Map.of("labour", 25.0))) {
            assertThat(cell(book, "mean_now").getNumericCellValue())
                    .isLessThan(cell(book, "mean_then").getNumericCellValue());
        }
    }

    @Test
    void whereNoPriceMakesSenseTheSheetSaysNone() throws IOException {
        try (XSSFWorkbook book = changed(Map.of("freight", 100_000_000.0))) {
            assertThat(cell(book, "highest_bid").getStringCellValue()).isEqualTo("none");
            assertThat(cell(book, "loss").getNumericCellValue()).isEqualTo(1);
        }
    }

    @Test
    void aSellersTextIsNoFormulaAndChartsAreNative() throws IOException {
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(folder.resolve("bid.xlsx")))) {
            XSSFSheet lines = book.getSheet("Lines");
            lines.forEach(row -> row.forEach(c -> assertThat(c.getCellType()).isNotEqualTo(CellType.FORMULA)));
            assertThat(book.getSheet("Bid").createDrawingPatriarch().getCharts())
                    .hasSize(2);
        }
    }

    /** A result that is kept would be believed. */
    private static void forget(Cell cell) {
        if (cell.getCellType() == CellType.FORMULA) {
            ((XSSFCell) cell).getCTCell().unsetV();
        }
    }

    @Test
    void anotherSpreadsheetProgramWorksOutTheSame(@TempDir Path other) throws Exception {
        Path program = Path.of("/usr/bin/libreoffice");
        assumeTrue(Files.isExecutable(program), "LibreOffice is not here");
        Path from = other.resolve("changed.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(folder.resolve("bid.xlsx")));
                OutputStream out = Files.newOutputStream(from)) {
            cell(book, "price").setCellValue(333);
            cell(book, "confidence").setCellValue(0.6);
            for (Sheet sheet : book) {
                sheet.forEach(row -> row.forEach(BidSheetTest::forget));
            }
            book.write(out);
        }
        Process process = new ProcessBuilder(
                        program.toString(),
                        "-env:UserInstallation=" + other.resolve("profile").toUri(),
                        "--headless",
                        "--convert-to",
                        "xlsx:Calc MS Excel 2007 XML",
                        "--outdir",
                        other.resolve("out").toString(),
                        from.toString())
                .redirectErrorStream(true)
                .redirectOutput(other.resolve("log").toFile())
                .start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(other.resolve("out/changed.xlsx")))) {
            agrees(book, answer("--price", "333", "--confidence", "0.6"));
        }
    }
}
