package org.salvedge.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook in the making: sheets in the order in which they are named; those with charts or charted figures are kept in memory,
 * the long ones are streamed with their text in line. The same content gives the same bytes.
 */
final class Book implements AutoCloseable {
    private final XSSFWorkbook book = new XSSFWorkbook();
    private final Map<String, Consumer<Sheet>> late = new LinkedHashMap<>();
    private final Paper paper;
    private final Styles styles;
    private final SheetWriter writer;

    Book(Paper paper, String title) {
        this.paper = paper;
        styles = new Styles(book, paper);
        writer = new SheetWriter(styles, paper);
        var properties = book.getProperties().getCoreProperties();
        Date day = Date.from(paper.printedOn().atStartOfDay(ZoneOffset.UTC).toInstant());
        properties.setTitle(title);
        properties.setCreator("salvedge");
        properties.setCreated(Optional.of(day));
        properties.setModified(Optional.of(day));
    }

    /** Makes a small workbook and throws it away: most of a first workbook's time goes into loading classes. */
    static void practise() {
        Paper paper = new Paper("", LocalDate.EPOCH, "A4", Currency.getInstance("EUR"));
        Table table = Table.of(Figure.FAULT.column(), Figure.SHARE.column())
                .row("none", 1.0)
                .build();
        try (Book book = new Book(paper, "")) {
            Charted charted = Charted.on(book, "a", "", table);
            book.longTable("b", "", table, 1);
            Charts charts = new Charts(charted.sheet());
            List<Charts.Run> runs = List.of(charted.run(Figure.SHARE, 0, ""));
            charts.lines(new Charts.Place(2, 0, 3, 1), "", "0", charted.run(Figure.FAULT, 0, ""), runs);
            charts.bars(new Charts.Place(2, 1, 3, 2), "", "0", true, charted.run(Figure.FAULT, 0, ""), runs);
            book.writeTo(OutputStream.nullOutputStream());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Paper paper() {
        return paper;
    }

    Styles styles() {
        return styles;
    }

    SheetWriter writer() {
        return writer;
    }

    /** An empty sheet to be filled by hand. */
    XSSFSheet sheet(String name) {
        return book.createSheet(name);
    }

    /** A sheet of one table that charts may draw on. */
    XSSFSheet table(String name, String about, Table table, int frozen) {
        XSSFSheet sheet = book.createSheet(name);
        writer.write(sheet, about, table, frozen);
        return sheet;
    }

    /** A sheet of one table of any length; written when the book is. */
    void longTable(String name, String about, Table table, int frozen) {
        book.createSheet(name);
        late.put(name, sheet -> writer.write(sheet, about, table, frozen));
    }

    /** A list for the screen: all rows are there, but of a long one only the first go to paper, which it says. */
    void list(String name, String about, Table table, int frozen) {
        if (table.rows().size() <= Print.ROWS_OF_LISTS) {
            longTable(name, about, table, frozen);
            return;
        }
        String told = about + " On paper: the first " + Print.ROWS_OF_LISTS + " rows.";
        book.createSheet(name);
        late.put(name, sheet -> {
            writer.write(sheet, told, table, frozen);
            Print.firstRows(
                    sheet,
                    SheetWriter.FIRST_ROW + Print.ROWS_OF_LISTS,
                    table.columns().size());
        });
    }

    /** Works out every formula, so that programs which only read have the figures too; others work them out again. */
    void recalculate() {
        book.getCreationHelper().createFormulaEvaluator().evaluateAll();
        book.setForceFormulaRecalculation(true);
    }

    void writeTo(OutputStream out) throws IOException {
        PassingFiles.use();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (SXSSFWorkbook stream = new QuickBook(book)) {
            late.forEach((name, write) -> write.accept(stream.getSheet(name)));
            stream.write(bytes);
        } catch (IllegalStateException e) {
            // POI's wrapping where the disk of passing files is full or may not be written.
            if (e.getCause() instanceof IOException disk) {
                throw disk;
            }
            throw e;
        }
        SameBytes.copy(bytes.toByteArray(), out);
    }

    @Override
    public void close() throws IOException {
        book.close();
    }
}
