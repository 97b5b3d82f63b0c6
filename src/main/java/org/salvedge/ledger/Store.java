package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Fact;

/** Rows of the ledger's tables as facts, within a transaction of the caller. */
final class Store {
    /** Condition of rows that nothing supersedes. */
    static final String STANDS = " NOT EXISTS (SELECT 1 FROM supersede WHERE old = entry)";

    private final Connection connection;
    private final StoredDictionary words;
    private final StoredDictionary lots;
    private final StoredDictionary units;
    private final Map<Integer, Currency> lotCurrencies = new HashMap<>();
    private final Codec codec;
    private final Codec finding;

    Store(Connection connection, Currency book, Codes codes) {
        this.connection = connection;
        words = new StoredDictionary(connection, "word");
        lots = new StoredDictionary(connection, "lot_label");
        units = new StoredDictionary(connection, "unit_label");
        codec = new Codec(words, lots, units, book, this::lotCurrency, codes);
        finding = new Codec(new Lookup(words), new Lookup(lots), new Lookup(units), book, this::lotCurrency, codes);
    }

    /** A dictionary that gives no new numbers. */
    private record Lookup(Dictionary all) implements Dictionary {
        @Override
        public int id(String text) throws SQLException {
            return all.find(text);
        }

        @Override
        public int find(String text) throws SQLException {
            return all.find(text);
        }

        @Override
        public String text(int id) throws SQLException {
            return all.text(id);
        }
    }

    Connection connection() {
        return connection;
    }

    Codec codec() {
        return codec;
    }

    /** To be called when a transaction was rolled back: what was remembered may not be there. */
    void forget() {
        words.forget();
        lots.forget();
        units.forget();
        lotCurrencies.clear();
    }

    private Currency lotCurrency(int lot) throws SQLException {
        Currency known = lotCurrencies.get(lot);
        if (known == null) {
            try (PreparedStatement select =
                    connection.prepareStatement("SELECT currency FROM lot WHERE lot = ? ORDER BY entry DESC LIMIT 1")) {
                select.setInt(1, lot);
                try (ResultSet row = select.executeQuery()) {
                    known = row.next() ? Currency.getInstance(row.getString(1)) : codec.book();
                }
            }
            lotCurrencies.put(lot, known);
        }
        return known;
    }

    /** Rows that a condition picks, in order of entry. */
    <F extends Fact> List<Stored<F>> where(Table<F> table, String condition, Object... parameters) throws SQLException {
        List<Stored<F>> rows = new ArrayList<>();
        String sql = table.select() + " WHERE " + condition + " ORDER BY entry";
        try (PreparedStatement select = connection.prepareStatement(sql)) {
            Database.bind(select, parameters);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    rows.add(new Stored<>(row.getLong(1), table.read(row, codec)));
                }
            }
        }
        return rows;
    }

    <F extends Fact> List<Stored<F>> standing(Table<F> table, String condition, Object... parameters)
            throws SQLException {
        return where(table, condition + " AND" + STANDS, parameters);
    }

    /** The standing row with the key of that fact. */
    <F extends Fact> Optional<Stored<F>> sameKey(F fact) throws SQLException {
        Table<F> table = Tables.of(fact);
        StringBuilder condition = new StringBuilder();
        List<Object> parameters = new ArrayList<>();
        for (Column<F, ?> column : table.columns()) {
            if (column.isKey()) {
                condition
                        .append(condition.isEmpty() ? "" : " AND ")
                        .append(column.quoted())
                        .append(" = ?");
                parameters.add(keyPart(column, fact));
            }
        }
        return standing(table, condition.toString(), parameters.toArray()).stream()
                .findFirst();
    }

    private <F extends Fact, V> Object keyPart(Column<F, V> column, F fact) throws SQLException {
        V value = column.of(fact);
        if (value == null) {
            throw new IllegalStateException(column.name() + " is missing");
        }
        return column.type().isText()
                ? column.type().toText(value)
                : (Object) column.type().toNumber(value, finding);
    }

    /** The row of one entry, superseded or not. */
    Optional<Stored<? extends Fact>> entry(long number) throws SQLException {
        for (Table<?> table : Tables.ALL) {
            List<? extends Stored<? extends Fact>> row = where(table, "entry = ?", number);
            if (!row.isEmpty()) {
                return Optional.of(row.get(0));
            }
        }
        return Optional.empty();
    }

    <F extends Fact> void insert(long entry, F fact) throws SQLException {
        Table<F> table = Tables.of(fact);
        Cells cells = table.newCells(1);
        table.encode(fact, cells, 0, codec);
        try (PreparedStatement insert = connection.prepareStatement(table.insert())) {
            table.bind(insert, entry, cells, 0, cells.crc(table.mark(), entry, 0));
            insert.executeUpdate();
        }
        if (fact instanceof org.salvedge.shop.Lot lot) {
            lotCurrencies.put(codec.lots().id(lot.lot().value()), lot.currency());
        }
    }

    boolean stands(long entry) throws SQLException {
        return supersededBy(entry) == 0;
    }

    long supersededBy(long entry) throws SQLException {
        return Database.number(connection, "SELECT new FROM supersede WHERE old = ?", 0, entry);
    }

    long lastEntry() throws SQLException {
        return Database.number(connection, "SELECT last FROM batch ORDER BY first DESC LIMIT 1", 0);
    }
}
