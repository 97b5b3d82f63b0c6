package org.salvedge.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.LinkedHashMap;
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
    private static final int ROWS_IN_MEMORY = 200;

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

    void writeTo(OutputStream out) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (SXSSFWorkbook stream = new SXSSFWorkbook(book, ROWS_IN_MEMORY)) {
            late.forEach((name, write) -> write.accept(stream.getSheet(name)));
            stream.write(bytes);
        }
        SameBytes.copy(bytes.toByteArray(), out);
    }

    @Override
    public void close() throws IOException {
        book.close();
    }
}
