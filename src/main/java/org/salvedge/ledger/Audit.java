package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;
import org.salvedge.shop.Timeline;

/** Checks a ledger against its own rules: file, numbering, checksums, references, sums, histories. */
final class Audit {
    private final Database database;
    private final Settings settings;
    private final Progress progress;
    private final Findings findings = new Findings();

    Audit(Database database, Settings settings, Progress progress) {
        this.database = database;
        this.settings = settings;
        this.progress = progress;
    }

    private interface Step {
        void in(Connection connection) throws SQLException;
    }

    List<Finding> run() {
        step("the file", 0, this::file);
        step("checksums", 0.2, c -> new AuditRows(c, settings, findings, Tables.ALL).run());
        step("references", 0.7, this::references);
        step("landed costs", 0.8, c -> new AuditShares(c, settings, findings).run());
        step("acts", 0.82, c -> {
            if (Acts.noted(c)) {
                new Acts(new Store(c, settings.currency(), settings.codes())).audit(findings);
            }
        });
        step("histories", 0.85, c -> histories());
        progress.step("done", 1);
        return findings.list();
    }

    /** A file too damaged to be read on is a finding, not a failure of the audit. */
    private void step(String what, double done, Step step) {
        progress.step(what, done);
        try {
            database.doRead(c -> {
                try {
                    step.in(c);
                } catch (SQLException e) {
                    findings.add("the file can be read", what, String.valueOf(e.getMessage()));
                }
            });
        } catch (LedgerFailure e) {
            findings.add("the file can be read", what, String.valueOf(e.getMessage()));
        }
    }

    private void file(Connection connection) throws SQLException {
        each(connection, "PRAGMA integrity_check", row -> {
            if (!"ok".equals(row.getString(1))) {
                findings.add("the file is sound", "SQLite's own check", row.getString(1));
            }
        });
        each(
                connection,
                "PRAGMA foreign_key_check",
                row -> findings.add(
                        "references hold",
                        row.getString(1) + ", entry " + row.getLong(2),
                        "refers to a row of " + row.getString(3) + " that is not there"));
        Schema.differences(connection)
                .forEach(name ->
                        findings.add("the tables are as they were made", name, "was changed, removed or added"));
    }

    private interface Row {
        void take(ResultSet row) throws SQLException;
    }

    private static void each(Connection connection, String sql, Row taker) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                taker.take(row);
            }
        }
    }

    private void references(Connection connection) throws SQLException {
        for (Table<?> table : Tables.ALL) {
            String key = String.join(
                    ", ",
                    table.columns().stream()
                            .filter(Column::isKey)
                            .map(Column::quoted)
                            .toList());
            each(
                    connection,
                    "SELECT min(entry), max(entry) FROM " + table.name() + " WHERE" + Store.STANDS + " GROUP BY " + key
                            + " HAVING count(*) > 1",
                    row -> findings.add(
                            "a key stands once",
                            table.name(),
                            "entries " + row.getLong(1) + " and " + row.getLong(2) + " stand for the same thing"));
        }
        for (Link link : Link.ALL) {
            String from = link.from().name();
            each(
                    connection,
                    "SELECT entry FROM " + from + " WHERE \"" + link.column() + "\" IS NOT NULL AND" + Store.STANDS
                            + " AND NOT EXISTS (SELECT 1 FROM " + link.to().name() + " t WHERE t.\"" + link.there()
                            + "\" = " + from + ".\"" + link.column()
                            + "\" AND NOT EXISTS (SELECT 1 FROM supersede WHERE old = t.entry))",
                    row -> findings.add(
                            "no row is an orphan",
                            "entry " + row.getLong(1),
                            "its " + link.column() + " is not on record, or was taken back"));
        }
    }

    private void histories() {
        History history = new HistoryReader(database, settings, Detail.FULL, Progress.NONE).read(AsOf.NOW);
        Timeline timeline = new Timeline();
        for (int set = 0; set < history.sets(); set++) {
            history.walk(set, timeline);
            Timeline.Impossible why = timeline.impossible();
            Timeline.Kind kind = timeline.impossibleKind();
            if (why != null && kind != null) {
                findings.add(
                        "histories are possible",
                        "set " + history.label(set),
                        event(history, set, kind, timeline.impossibleIndex()) + " " + why.words());
            }
        }
    }

    private static String event(History history, int set, Timeline.Kind kind, int index) {
        int day = switch (kind) {
            case ATTEMPT -> history.attemptDay(history.attemptStart(set) + index);
            case EXIT -> history.exitDay(history.exitStart(set) + index);
            case COMEBACK -> history.comebackDay(history.comebackStart(set) + index);
        };
        String name = switch (kind) {
            case ATTEMPT -> "attempt " + history.attemptNumber(history.attemptStart(set) + index);
            case EXIT -> "exit (" + ExitKind.values()[history.exitKind(history.exitStart(set) + index)].code() + ")";
            case COMEBACK -> "comeback";
        };
        return name + " on " + java.time.LocalDate.ofEpochDay(day);
    }
}
