package org.salvedge.yield;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The yield table by SQLite alone: the rules in {@code recount.sql}, the grouping here. Shares no code with what it checks. */
final class Recount {
    private static final Map<String, String> SET_KEYS = Map.of(
            "family", "f.family",
            "maker", "f.maker",
            "model", "f.model",
            "supplier", "f.supplier",
            "lot", "f.lot",
            "claimed", "f.claimed",
            "grade", "f.grade",
            "month", "f.month",
            "inches", "CASE f.inches WHEN '' THEN '' ELSE CAST(CAST(f.inches + 0.5 AS INTEGER) AS TEXT) END");
    private final Connection connection;

    /** @param folder of a history package */
    Recount(Connection connection, Path folder) throws SQLException, IOException {
        this.connection = connection;
        connection.setAutoCommit(false);
        for (String table : List.of("lots", "units", "attempts", "exits", "comebacks")) {
            load(table, folder.resolve(table + ".csv"));
        }
        try (InputStream in = Objects.requireNonNull(Recount.class.getResourceAsStream("recount.sql"));
                Statement statement = connection.createStatement()) {
            String script = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            for (String command : script.replaceAll("(?m)^--.*$", "").split(";\\s*\n", -1)) {
                if (!command.isBlank()) {
                    statement.execute(command);
                }
            }
        }
        connection.commit();
    }

    /** Every column as text. */
    private void load(String table, Path file) throws SQLException, IOException {
        try (CSVParser rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(file))) {
            List<String> names = rows.getHeaderNames();
            String quoted = names.stream().map(n -> '"' + n + '"').collect(Collectors.joining(", "));
            try (Statement statement = connection.createStatement()) {
                statement.execute("CREATE TABLE " + table + " (" + quoted + ")");
                if (names.contains("unit")) {
                    statement.execute("CREATE INDEX " + table + "_unit ON " + table + " (unit)");
                }
            }
            String marks = "?" + ", ?".repeat(names.size() - 1);
            try (PreparedStatement insert =
                    connection.prepareStatement("INSERT INTO " + table + " VALUES (" + marks + ")")) {
                for (CSVRecord row : rows) {
                    for (int i = 0; i < names.size(); i++) {
                        insert.setString(i + 1, row.get(i));
                    }
                    insert.addBatch();
                }
                insert.executeBatch();
            }
        }
    }

    /** Figures by their names in the data formats, under the row's keys in order of code points; the undefined are absent. */
    Map<List<String>, Map<String, Number>> table(List<String> by) throws SQLException {
        Map<List<String>, Map<String, Number>> rows = new TreeMap<>(Recount::codePoints);
        take(rows, by, ofAttempts(by) ? overAttempts(by) : overSets(by));
        take(rows, by, minutes(by));
        take(rows, by, """
                SELECT %s, count(*) AS gone, sum(margin) / 100.0 AS margin_total, sum(margin) / 100.0 / count(*) AS margin_per_set,
                       CASE WHEN sum(micros) > 0 THEN sum(margin) / 100.0 / (sum(micros) / 60e6) END AS margin_per_hour
                FROM (SELECT margin, micros, %s FROM fact f WHERE gone) GROUP BY %1$s""".formatted(names(by), keys(by, "deciding_", "exit_month")));
        return rows;
    }

    private static boolean ofAttempts(List<String> by) {
        return !SET_KEYS.keySet().containsAll(by);
    }

    private static String overAttempts(List<String> by) {
        return figures(by, """
                SELECT %s, count(DISTINCT unit) AS sets, count(*) AS attempts, sum(result IN ('pass', 'fail')) AS n,
                       sum(result = 'pass') AS saved, sum(result = 'pending') AS in_progress,
                       sum(CASE WHEN result IN ('pass', 'fail') THEN micros END) AS micros,
                       sum(first AND result IN ('pass', 'fail')) AS tried, sum(first AND result = 'pass') AS firsts
                FROM (SELECT t.unit, t.result, t.micros, coalesce(t.pos = f.first_pos, 0) AS first, %s
                      FROM turn t JOIN fact f USING (unit))
                GROUP BY %1$s""".formatted(names(by), keys(by, "t.", "f.month")));
    }

    private static String overSets(List<String> by) {
        return figures(by, """
                SELECT %s, count(*) AS sets, sum(attempts) AS attempts, sum(decided) AS n, sum(coalesce(saved, 0)) AS saved,
                       sum(NOT decided AND NOT aside) AS in_progress, sum(CASE WHEN decided THEN micros END) AS micros,
                       sum(coalesce(first_result IN ('pass', 'fail'), 0)) AS tried, sum(coalesce(first_result = 'pass', 0)) AS firsts
                FROM (SELECT attempts, decided, saved, aside, micros, first_result, %s FROM fact f)
                GROUP BY %1$s""".formatted(names(by), keys(by, "", "f.month")));
    }

    private static String figures(List<String> by, String counted) {
        return """
                SELECT %s, sets, attempts, n AS decided, saved, in_progress, p AS yield,
                       CASE WHEN n > 0 THEN (p + z*z/(2*n) - z*sqrt(p*(1-p)/n + z*z/(4.0*n*n))) / (1 + z*z/n) END AS yield_low,
                       CASE WHEN n > 0 THEN (p + z*z/(2*n) + z*sqrt(p*(1-p)/n + z*z/(4.0*n*n))) / (1 + z*z/n) END AS yield_high,
                       CASE WHEN tried > 0 THEN firsts * 1.0 / tried END AS first_pass_yield,
                       CASE WHEN saved > 0 THEN micros / 1e6 / saved END AS minutes_per_saved
                FROM (SELECT *, 1.959963984540054 AS z, CASE WHEN n > 0 THEN saved * 1.0 / n END AS p FROM (%s))""".formatted(names(by), counted);
    }

    /** Type 7: the value at place 1 + p(n - 1), between its neighbours in proportion. */
    private static String minutes(List<String> by) {
        return """
                SELECT %1$s, max(CASE WHEN r = i5 THEN v END) * (1 - h5) + max(CASE WHEN r = min(n, i5 + 1) THEN v END) * h5 AS minutes_median,
                       max(CASE WHEN r = i9 THEN v END) * (1 - h9) + max(CASE WHEN r = min(n, i9 + 1) THEN v END) * h9 AS minutes_p90
                FROM (SELECT *, CAST((n - 1) * 0.5 AS INTEGER) + 1 AS i5, (n - 1) * 0.5 - CAST((n - 1) * 0.5 AS INTEGER) AS h5,
                             CAST((n - 1) * 0.9 AS INTEGER) + 1 AS i9, (n - 1) * 0.9 - CAST((n - 1) * 0.9 AS INTEGER) AS h9
                      FROM (SELECT *, row_number() OVER (PARTITION BY %1$s ORDER BY v) AS r, count(*) OVER (PARTITION BY %1$s) AS n
                            FROM (SELECT t.fix_minutes AS v, %2$s FROM turn t JOIN fact f USING (unit) WHERE t.fix_minutes IS NOT NULL)))
                GROUP BY %1$s""".formatted(names(by), keys(by, "t.", "f.month"));
    }

    /** Keys as expressions, each named k_KEY. */
    private static String keys(List<String> by, String ofAttempts, String month) {
        List<String> keys = new ArrayList<>();
        for (String key : by) {
            String expression = key.equals("month") ? month : SET_KEYS.getOrDefault(key, ofAttempts + key);
            keys.add(expression + " AS k_" + key);
        }
        return String.join(", ", keys);
    }

    private static String names(List<String> by) {
        return by.stream().map(k -> "k_" + k).collect(Collectors.joining(", "));
    }

    private void take(Map<List<String>, Map<String, Number>> rows, List<String> by, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            ResultSetMetaData columns = result.getMetaData();
            while (result.next()) {
                Map<String, Number> figures = rows.computeIfAbsent(key(result, by), k -> new LinkedHashMap<>());
                for (int i = by.size() + 1; i <= columns.getColumnCount(); i++) {
                    if (result.getObject(i) instanceof Number number) {
                        figures.put(columns.getColumnLabel(i), number);
                    }
                }
            }
        }
    }

    private static List<String> key(ResultSet result, List<String> by) throws SQLException {
        List<String> key = new ArrayList<>();
        for (int i = 1; i <= by.size(); i++) {
            key.add(Objects.requireNonNullElse(result.getString(i), ""));
        }
        return key;
    }

    /** What was tried and saved of one cell in one lot. */
    record Trials(List<String> key, String lot, int decided, int saved) {}

    List<Trials> trials(List<String> by) throws SQLException {
        String sql = ofAttempts(by) ? """
                SELECT %s, lot, count(*), sum(result = 'pass')
                FROM (SELECT t.result, f.lot, %s FROM turn t JOIN fact f USING (unit) WHERE t.result IN ('pass', 'fail'))
                GROUP BY %1$s, lot""" : """
                SELECT %s, lot, count(*), sum(coalesce(saved, 0)) FROM (SELECT saved, lot, %s FROM fact f WHERE decided) GROUP BY %1$s, lot""";
        List<Trials> rows = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(sql.formatted(names(by), keys(by, "t.", "f.month")))) {
            int n = by.size();
            while (result.next()) {
                rows.add(new Trials(
                        key(result, by), result.getString(n + 1), result.getInt(n + 2), result.getInt(n + 3)));
            }
        }
        return rows;
    }

    private static int codePoints(List<String> a, List<String> b) {
        for (int i = 0; i < a.size(); i++) {
            int order = Arrays.compare(
                    a.get(i).codePoints().toArray(), b.get(i).codePoints().toArray());
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }
}
