package org.salvedge.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.salvedge.shop.Refused;

/** The tables, made by numbered scripts; how many of them have run is the file's version. */
final class Schema {
    /** "salv": tells our files from other programs' databases. */
    static final int APPLICATION_ID = 0x73616c76;

    private static final List<String> SCRIPTS = List.of("001-tables.sql", "002-indexes.sql", "003-append-only.sql");

    private static final Pattern CREATED = Pattern.compile("CREATE (?:UNIQUE )?(?:TABLE|INDEX|TRIGGER) (\\w+)");
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
        for (String script : SCRIPTS.subList(done, SCRIPTS.size())) {
            for (String statement : statements(script)) {
                Database.execute(connection, statement);
            }
        }
        Database.execute(connection, "PRAGMA user_version = " + SCRIPTS.size());
    }

    /** Names of tables, indexes and triggers that are not as the scripts made them. */
    static List<String> differences(Connection connection) throws SQLException {
        Map<String, String> wanted = new TreeMap<>();
        for (String script : SCRIPTS) {
            for (String statement : statements(script)) {
                String sql = statement.strip();
                wanted.put(nameIn(sql), plain(sql.substring(0, sql.length() - 1)));
            }
        }
        List<String> differences = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(
                        "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                String sql = wanted.remove(row.getString(1));
                if (sql == null || !sql.equals(plain(row.getString(2)))) {
                    differences.add(row.getString(1));
                }
            }
        }
        differences.addAll(wanted.keySet());
        return differences;
    }

    /** Name of what a CREATE statement makes. */
    private static String nameIn(String sql) {
        Matcher matcher = CREATED.matcher(sql);
        if (!matcher.lookingAt()) {
            throw new IllegalStateException("a script holds " + sql);
        }
        return matcher.group(1);
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
