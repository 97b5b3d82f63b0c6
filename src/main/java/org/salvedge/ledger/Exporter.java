package org.salvedge.ledger;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Settings;

/** Writes the facts that stand as a history package, in its canonical form, into a folder that is there and empty. */
final class Exporter {
    private static final int BUFFER = 1 << 16;
    private static final int ROWS_A_STEP = 20_000;

    private final Store store;
    private final Codec codec;
    private final Settings settings;
    private final Progress progress;
    private long rows;
    private long allRows;

    Exporter(Store store, Settings settings, Progress progress) throws SQLException {
        this.store = store;
        this.settings = settings;
        this.progress = progress;
        codec = new Codec(
                new BulkDictionary(store.connection(), "word"),
                new BulkDictionary(store.connection(), "lot_label"),
                new BulkDictionary(store.connection(), "unit_label"),
                settings.currency(),
                store.codec().lotCurrencies(),
                settings.codes());
    }

    /** Within a transaction of the caller; how many rows it wrote. */
    long write(Path folder) throws SQLException {
        allRows = Math.max(1, store.lastEntry());
        List<Table<?>> written = new ArrayList<>();
        try {
            for (Table<?> table : Tables.ALL) {
                if (PackageFiles.NEEDED.contains(table) || hasRows(table)) {
                    write(table, folder.resolve(table.file()));
                    written.add(table);
                }
            }
            try (Writer out = open(folder.resolve(PackageFiles.DESCRIPTOR))) {
                out.write(Descriptor.json(written, PackageSettings.of(settings)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    private boolean hasRows(Table<?> table) throws SQLException {
        return Database.number(
                        store.connection(), "SELECT 1 FROM " + table.name() + " WHERE" + Store.STANDS + " LIMIT 1", 0)
                == 1;
    }

    /** On disk when closed. */
    private static Writer open(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        return new BufferedWriter(
                new OutputStreamWriter(
                        new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER), StandardCharsets.UTF_8) {
                    @Override
                    public void close() throws IOException {
                        flush();
                        if (channel.isOpen()) {
                            channel.force(true);
                        }
                        super.close();
                    }
                },
                BUFFER);
    }

    private <F extends Fact> void write(Table<F> table, Path file) throws SQLException, IOException {
        String order = table.columns().stream()
                .filter(Column::isKey)
                .map(Exporter::orderOf)
                .collect(Collectors.joining(", "));
        Connection connection = store.connection();
        try (Writer out = open(file);
                PreparedStatement select =
                        connection.prepareStatement(table.select() + " WHERE" + Store.STANDS + " ORDER BY " + order);
                ResultSet row = select.executeQuery()) {
            header(table, out);
            while (row.next()) {
                write(table, table.read(row, codec), out);
                if (++rows % ROWS_A_STEP == 0) {
                    progress.step("writing " + table.file(), Math.min(1, (double) rows / allRows));
                }
            }
        }
    }

    /** Numbers by value, text by code point: SQLite compares UTF-8 byte by byte, which is that order. */
    private static String orderOf(Column<?, ?> column) {
        Type<?> type = column.type();
        if (type.equals(Labels.UNIT)) {
            return "(SELECT text FROM unit_label WHERE id = " + column.quoted() + ")";
        } else if (type.equals(Labels.LOT)) {
            return "(SELECT text FROM lot_label WHERE id = " + column.quoted() + ")";
        }
        return type.equals(Types.WORD) ? "(SELECT text FROM word WHERE id = " + column.quoted() + ")" : column.quoted();
    }

    private static <F extends Fact> void header(Table<F> table, Writer out) throws IOException {
        out.write(table.columns().stream().map(Column::name).collect(Collectors.joining(",")));
        out.write("\r\n");
    }

    private static <F extends Fact> void write(Table<F> table, F fact, Writer out) throws IOException {
        boolean first = true;
        for (Column<F, ?> column : table.columns()) {
            if (!first) {
                out.write(',');
            }
            first = false;
            cell(FormulaText.shown(column, column.format(fact)), out);
        }
        out.write("\r\n");
    }

    /** In quotes only where RFC 4180 needs them. */
    private static void cell(String text, Writer out) throws IOException {
        boolean plain = true;
        for (int i = 0; i < text.length() && plain; i++) {
            char c = text.charAt(i);
            plain = c != ',' && c != '"' && c != '\r' && c != '\n';
        }
        out.write(plain ? text : '"' + text.replace("\"", "\"\"") + '"');
    }
}
