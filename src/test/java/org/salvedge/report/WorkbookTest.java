package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.xmlbeans.XmlError;
import org.apache.xmlbeans.XmlOptions;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fact;
import org.salvedge.shop.TvSet;
import org.salvedge.yield.Key;
import org.salvedge.yield.MessyShop;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Outcomes;
import org.salvedge.yield.Packages;
import org.salvedge.yield.YieldTable;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WorkbookTest {
    private static final BigDecimal LABOUR = new BigDecimal("24");
    private static final String FORMULA = "=HYPERLINK(\"http://example.org\")";
    private static final Paper PAPER = new Paper("Reed & Sons", LocalDate.of(2025, 7, 1), "A4", MessyShop.EUR);

    private MonthReview review;
    private YieldTable yields;
    private YieldTable whole;
    private Path month;
    private Path table;

    @BeforeAll
    void write(@TempDir Path folder) throws IOException {
        List<Fact> facts = new ArrayList<>();
        for (Fact fact : MessyShop.facts(80, 11)) {
            boolean odd = fact instanceof TvSet set && set.unit().value().endsWith("-003");
            facts.add(
                    odd
                            ? ((TvSet) fact)
                                    .toBuilder()
                                            .model(FORMULA)
                                            .family("+F\u00fc\ud83d\ude00")
                                            .build()
                            : fact);
        }
        var history = Packages.history(facts, folder);
        review = MonthReview.of(history, LABOUR, YearMonth.of(2025, 6));
        Outcomes outcomes = Outcomes.of(history, LABOUR);
        yields = YieldTable.of(outcomes, List.of(Key.FAMILY, Key.FIX));
        whole = YieldTable.of(outcomes, List.of());
        month = folder.resolve("reports").resolve("month.xlsx");
        table = folder.resolve("reports").resolve("yield.xlsx");
        MonthWorkbook.write(review, PAPER, month);
        YieldWorkbook.write(yields, whole, PAPER, table);
        assertThat(facts.stream().filter(f -> f instanceof Attempt)).isNotEmpty();
    }

    @Test
    void theMonthIsAsInTheGoldenText() throws IOException {
        assertThat(WorkbookText.of(month)).isEqualTo(golden("month.txt", WorkbookText.of(month)));
    }

    @Test
    void theYieldTableIsAsInTheGoldenText() throws IOException {
        assertThat(WorkbookText.of(table)).isEqualTo(golden("yield.txt", WorkbookText.of(table)));
    }

    /** With -Dgolden.update=true the text is written anew, to be reviewed like code. */
    private static List<String> golden(String name, List<String> now) throws IOException {
        Path file = Path.of("src", "test", "resources", "org", "salvedge", "report", name);
        if (Boolean.getBoolean("golden.update")) {
            Files.createDirectories(file.getParent());
            Files.write(file, now);
        }
        return Files.readAllLines(file);
    }

    @Test
    void theSameFiguresGiveTheSameBytes(@TempDir Path folder) throws IOException {
        MonthWorkbook.write(review, PAPER, folder.resolve("again.xlsx"));
        assertThat(folder.resolve("again.xlsx")).hasSameBinaryContentAs(month);
    }

    @Test
    void textFromSellersIsTextAlsoWhenItIsEdited() throws IOException {
        int found = 0;
        for (Path file : List.of(month, table)) {
            try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
                for (Cell cell : cells(book)) {
                    assertThat(cell.getCellType()).isIn(CellType.STRING, CellType.NUMERIC);
                    if (cell.getCellType() == CellType.STRING
                            && cell.getStringCellValue().matches("[=+].*")) {
                        assertThat(cell.getCellStyle().getQuotePrefixed()).isTrue();
                        found++;
                    }
                }
            }
        }
        assertThat(found).isGreaterThan(1);
    }

    @Test
    void columnsAreWideEnoughForEveryNumber() throws IOException {
        DataFormatter formatter = new DataFormatter(java.util.Locale.ROOT);
        for (Path file : List.of(month, table)) {
            try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
                for (Cell cell : cells(book)) {
                    if (cell.getCellType() == CellType.NUMERIC) {
                        String shown = formatter.formatCellValue(cell);
                        assertThat(shown).as(cell.getAddress().toString()).doesNotContain("#");
                        assertThat(shown.length() * 256)
                                .as("%s!%s %s", cell.getSheet().getSheetName(), cell.getAddress(), shown)
                                .isLessThan(cell.getSheet().getColumnWidth(cell.getColumnIndex()));
                    }
                }
            }
        }
    }

    @Test
    void sheetsAndChartsKeepToTheSchemaOfTheFileFormat(@TempDir Path folder) throws IOException {
        MonthReview full =
                MonthReview.of(Packages.history(MessyShop.facts(200, 11), folder), LABOUR, YearMonth.of(2025, 6));
        Path fuller = folder.resolve("month.xlsx");
        MonthWorkbook.write(full, PAPER, fuller);
        int charts = 0;
        for (Path file : List.of(month, table, fuller)) {
            try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
                for (Sheet sheet : book) {
                    if (((XSSFSheet) sheet).getDrawingPatriarch() != null) {
                        for (XSSFChart chart :
                                ((XSSFSheet) sheet).getDrawingPatriarch().getCharts()) {
                            List<XmlError> errors = new ArrayList<>();
                            chart.getCTChartSpace().validate(new XmlOptions().setErrorListener(errors));
                            assertThat(errors).isEmpty();
                            charts++;
                        }
                    }
                    List<XmlError> errors = new ArrayList<>();
                    ((XSSFSheet) sheet).getCTWorksheet().validate(new XmlOptions().setErrorListener(errors));
                    assertThat(errors).as(sheet.getSheetName()).isEmpty();
                }
            }
        }
        assertThat(charts)
                .as("a chart only where it has something to show")
                .isEqualTo(charts(review) + 2 + charts(full));
    }

    private static int charts(MonthReview review) {
        boolean months = !review.why().signals().months().isEmpty();
        boolean lots = review.bids().stream().anyMatch(b -> b.finished());
        return 2 + (months ? 1 : 0) + (lots ? 1 : 0);
    }

    @Test
    void everyHeadingIsDefined() throws IOException {
        for (Path file : List.of(month, table)) {
            try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
                Set<String> defined = new HashSet<>();
                book.getSheet(DefinitionSheet.NAME)
                        .forEach(row -> defined.add(row.getCell(0).getStringCellValue()));
                for (int s = 1; s < book.getNumberOfSheets() - 1; s++) {
                    for (Cell cell : book.getSheetAt(s).getRow(SheetWriter.HEADING_ROW)) {
                        String heading = cell.getStringCellValue()
                                .replaceAll("\n(from|to|EUR)$", "")
                                .replace('\n', ' ');
                        assertThat(defined).contains(heading);
                    }
                }
            }
        }
    }

    @Test
    void anotherReaderFindsTheSameCells() throws IOException {
        for (Path file : List.of(month, table)) {
            assertThat(read(file)).isEqualTo(byPoi(file)).hasSizeGreaterThan(200);
        }
    }

    @Test
    void libreOfficeOpensItAndKeepsEveryCell(@TempDir Path folder) throws Exception {
        boolean there = Stream.of(System.getenv().getOrDefault("PATH", "").split(":", -1))
                .anyMatch(p -> Files.isExecutable(Path.of(p, "soffice")));
        assumeTrue(there, "soffice is not installed: the workbooks were not opened in LibreOffice");
        for (Path file : List.of(month, table)) {
            Process office = new ProcessBuilder(
                            "soffice",
                            "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                            "--headless",
                            "--convert-to",
                            "xlsx",
                            "--outdir",
                            folder.toString(),
                            file.toString())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("log").toFile())
                    .start();
            assertThat(office.waitFor(2, TimeUnit.MINUTES)).isTrue();
            Path converted = folder.resolve(file.getFileName());
            assertThat(converted).exists();
            assertThat(read(converted)).isEqualTo(read(file));
        }
    }

    /** Sheet, place and value of each cell that holds something; numbers to nine digits. */
    private static List<String> read(Path file) throws IOException {
        List<String> cells = new ArrayList<>();
        try (ReadableWorkbook book = new ReadableWorkbook(Files.newInputStream(file))) {
            for (var sheet : book.getSheets().toList()) {
                try (var rows = sheet.openStream()) {
                    rows.forEach(row -> row.forEach(cell -> {
                        if (cell != null
                                && cell.getRawValue() != null
                                && !cell.getRawValue().isEmpty()) {
                            String value = cell.getType() == org.dhatim.fastexcel.reader.CellType.NUMBER
                                    ? nine(new BigDecimal(cell.getRawValue()).doubleValue())
                                    : cell.getText();
                            cells.add(sheet.getName() + "!" + cell.getAddress() + " " + value);
                        }
                    }));
                }
            }
        }
        return cells;
    }

    private static List<String> byPoi(Path file) throws IOException {
        List<String> cells = new ArrayList<>();
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
            for (Cell cell : cells(book)) {
                String value = cell.getCellType() == CellType.NUMERIC
                        ? nine(cell.getNumericCellValue())
                        : cell.getStringCellValue();
                if (!value.isEmpty()) {
                    cells.add(cell.getSheet().getSheetName() + "!" + cell.getAddress() + " " + value);
                }
            }
        }
        return cells;
    }

    private static String nine(double number) {
        return String.format(java.util.Locale.ROOT, "%.9g", number);
    }

    private static List<Cell> cells(XSSFWorkbook book) {
        List<Cell> cells = new ArrayList<>();
        for (Sheet sheet : book) {
            for (Row row : sheet) {
                row.forEach(cells::add);
            }
        }
        return cells;
    }

    @Test
    void letterPaperAndCurrenciesWithoutCentsAreFollowed(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("letter.xlsx");
        var yen = java.util.Currency.getInstance("JPY");
        YieldWorkbook.write(yields, whole, new Paper("Reed", LocalDate.of(2025, 7, 1), "letter", yen), file);
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
            for (Sheet sheet : book) {
                assertThat(sheet.getPrintSetup().getPaperSize()).isEqualTo((short) 1);
            }
            Cell margin =
                    book.getSheet("Summary").getRow(SheetWriter.FIRST_ROW + 11).getCell(1);
            assertThat(margin.getCellStyle().getDataFormatString()).isEqualTo("#,##0\\ [$JPY]");
        }
    }

    @Test
    void aReportThatCannotBeWrittenLeavesWhatStoodThereAndNothingElse(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("month.xlsx");
        Files.writeString(file, "before", StandardCharsets.UTF_8);
        assertThatThrownBy(() -> WholeFile.write(file, out -> {
                    out.write(1);
                    throw new IOException("disk full");
                }))
                .isInstanceOf(IOException.class);
        assertThat(file).hasContent("before");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).containsExactly(file);
        }
    }

    /** One character of the width goes to the indent. */
    @Test
    void aColumnIsWideEnoughForCapitals(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("wide.xlsx");
        Table families = Table.of(Figure.FAMILY.column(), Figure.SHARE.column())
                .row("MW40MWC", 1.0)
                .build();
        try (Book book = new Book(PAPER, "")) {
            book.longTable("a", "", families, 1);
            WholeFile.write(file, book::writeTo);
        }
        try (XSSFWorkbook read = new XSSFWorkbook(Files.newInputStream(file))) {
            assertThat(read.getSheet("a").getColumnWidth(0) / 256)
                    .isGreaterThanOrEqualTo(TextLines.characters("MW40MWC") + 1)
                    .isGreaterThan("MW40MWC".length() + 2);
        }
    }

    @Test
    void theRowsOfALongSheetPassThroughAFileThatIsGoneAfter() throws IOException {
        String odd = new java.util.SplittableRandom(1)
                .ints(400)
                .mapToObj(i -> "<x>é\ud83d\ude00 " + i)
                .collect(java.util.stream.Collectors.joining(" "));
        List<Path> passing = new java.util.ArrayList<>();
        java.io.ByteArrayOutputStream bytes = new java.io.ByteArrayOutputStream();
        try (XSSFWorkbook whole = new XSSFWorkbook();
                QuickBook book = new QuickBook(whole)) {
            for (String name : List.of("short", "long")) {
                Sheet sheet = book.createSheet(name);
                for (int r = 0; r < (name.equals("long") ? 1_000 : 10); r++) {
                    sheet.createRow(r).createCell(0).setCellValue(odd + r);
                }
            }
            book.write(bytes);
            book.passing().forEach(passing::add);
            assertThat(passing).hasSize(1).allSatisfy(p -> assertThat(p).exists());
        }
        assertThat(passing).allSatisfy(p -> assertThat(p).doesNotExist());
        try (XSSFWorkbook read = new XSSFWorkbook(new java.io.ByteArrayInputStream(bytes.toByteArray()))) {
            assertThat(read.getSheet("long").getRow(999).getCell(0).getStringCellValue())
                    .isEqualTo(odd + 999);
            assertThat(read.getSheet("short").getRow(9).getCell(0).getStringCellValue())
                    .isEqualTo(odd + 9);
        }
    }
}
