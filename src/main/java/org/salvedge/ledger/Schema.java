package org.salvedge.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.salvedge.shop.Refused;

/** The tables, made by numbered scripts; how many of them have run is the file's version. */
final class Schema {
    /** "salv": tells our files from other programs' databases. */
    static final int APPLICATION_ID = 0x73616c76;

    static final List<String> SCRIPTS =
            List.of("001-tables.sql", "002-indexes.sql", "003-append-only.sql", "004-printings.sql", "005-acts.sql");

    private static final Pattern SPACE = Pattern.compile("\\s+");

    private Schema() {}

    static void create(Connection connection, Currency currency) throws SQLException {
        if (Database.number(connection, "SELECT count(*) FROM sqlite_schema", 0) > 0) {
            throw new Refused("there is a ledger already");
        }
        Database.execute(connection, "PRAGMA application_id = " + APPLICATION_ID);
        runFrom(connection, 0);
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO book VALUES (1, ?)")) {
            insert.setString(1, currency.getCurrencyCode());
            insert.executeUpdate();
        }
    }

    /** Refuses files that are not ours or newer than this program, and ledgers in another currency. */
    static void check(Connection connection, Currency currency) throws SQLException {
        if (Database.number(connection, "PRAGMA application_id", 0) != APPLICATION_ID) {
            throw new Refused("this file is not a ledger of this program");
        }
        long version = version(connection);
        if (version > SCRIPTS.size()) {
            throw new Refused("this ledger was written by a newer version of this program (its schema is " + version
                    + ", this version knows " + SCRIPTS.size() + "); install that version");
        }
        try (PreparedStatement select = connection.prepareStatement("SELECT currency FROM book");
                ResultSet row = select.executeQuery()) {
            String kept = row.next() ? row.getString(1) : "";
            if (!kept.equals(currency.getCurrencyCode())) {
                throw new Refused("this ledger is kept in " + kept + ", the settings say " + currency
                        + "; set currency = \"" + kept + "\" in shop.toml");
            }
        }
    }

    static boolean isOld(Connection connection) throws SQLException {
        return version(connection) < SCRIPTS.size();
    }

    static void upgrade(Connection connection) throws SQLException {
        runFrom(connection, (int) version(connection));
    }

    private static long version(Connection connection) throws SQLException {
        return Database.number(connection, "PRAGMA user_version", 0);
    }

    private static void runFrom(Connection connection, int done) throws SQLException {
        run(connection, SCRIPTS.subList(done, SCRIPTS.size()));
        Database.execute(connection, "PRAGMA user_version = " + SCRIPTS.size());
    }

    static void run(Connection connection, List<String> scripts) throws SQLException {
        for (String script : scripts) {
            for (String statement : statements(script)) {
                Database.execute(connection, statement);
            }
        }
    }

    /** Names of tables, indexes and triggers that are not as the scripts that have run made them. */
    static List<String> differences(Connection connection) throws SQLException {
        long done = Math.min(SCRIPTS.size(), Math.max(0, version(connection)));
        return differences(connection, SCRIPTS.subList(0, (int) done));
    }

    static List<String> differences(Connection connection, List<String> scripts) throws SQLException {
        Map<String, String> wanted;
        // A script may change what an earlier one made: what comes out of all of them is known when they have run.
        try (Connection fresh = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            run(fresh, scripts);
            wanted = objects(fresh);
        }
        List<String> differences = new ArrayList<>();
        objects(connection).forEach((name, sql) -> {
            if (!sql.equals(wanted.remove(name))) {
                differences.add(name);
            }
        });
        differences.addAll(wanted.keySet());
        return differences;
    }

    /** Tables, indexes and triggers by name, each as the statement that would make it. */
    private static Map<String, String> objects(Connection connection) throws SQLException {
        Map<String, String> objects = new TreeMap<>();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                objects.put(row.getString(1), plain(row.getString(2)));
            }
        }
        return objects;
    }

    private static String plain(String sql) {
        return SPACE.matcher(sql).replaceAll(" ").strip();
    }

    /** The statements that make the indexes. */
    static List<String> indexes() {
        return statements("002-indexes.sql");
    }

    /** The statements of a script; each ends with a semicolon at the end of a line. */
    private static List<String> statements(String script) {
        try (InputStream in = Schema.class.getResourceAsStream(script)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks " + script);
            }
            List<String> all = new ArrayList<>();
            StringBuilder one = new StringBuilder();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList()) {
                if (line.isBlank() || line.startsWith("--")) {
                    continue;
                }
                one.append(line).append('\n');
                if (line.endsWith(";")) {
                    all.add(one.toString());
                    one.setLength(0);
                }
            }
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
