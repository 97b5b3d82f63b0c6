package org.salvedge.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.ClaimWords;
import org.salvedge.manifest.ColumnReading;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.ManifestReader;
import org.salvedge.manifest.TableReading;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Plural;
import org.salvedge.report.Table;
import org.salvedge.shop.Claim;

/** Why a list was read as it was: each column, each remark, and the lines for shop.toml that would teach the program better. */
final class Explanation {
    private static final double NOT_SURE = 0.5;
    private static final int MOST_LINES = 40;

    private final Manifest manifest;
    private final List<ClaimWords> words;

    Explanation(Manifest manifest, List<ClaimWords> words) {
        this.manifest = manifest;
        this.words = words;
    }

    void print(Session session) {
        for (TableReading table : manifest.tables()) {
            session.say("");
            session.say((table.sheet().isEmpty() ? "" : "Sheet \"" + table.sheet() + "\", ") + "header in row "
                    + table.headerRow() + ", " + Plural.of(table.sets(), "set"));
            session.print(columns(table), Format.TABLE);
        }
        if (!words.isEmpty()) {
            session.say("");
            session.say("Sellers' words, the least sure first");
            session.print(remarks(), Format.TABLE);
        }
        List<String> lines = lines();
        if (!lines.isEmpty()) {
            session.say("");
            session.say(
                    "To teach it better, put lines such as these into shop.toml, the right word behind the equals sign:");
            lines.forEach(session::say);
        }
    }

    private static Table columns(TableReading table) {
        Table.Builder rows = Table.of(
                Column.of("column", "column", Kind.TEXT),
                Column.of("heading", "heading", Kind.KEY),
                Column.of("field", "read as", Kind.TEXT),
                Column.of("sureness", "how sure", Kind.RATIO),
                Column.of("words", "by the words", Kind.TEXT).asDroppable());
        for (ColumnReading c : table.columns()) {
            boolean read = c.field() != null;
            rows.row(
                    c.letter(),
                    c.heading(),
                    read ? c.field() : "not needed",
                    read ? Double.valueOf(Math.min(1, c.score())) : null,
                    read && c.words().isEmpty() ? "(by its cells)" : c.words());
        }
        return rows.build();
    }

    private Table remarks() {
        Table.Builder rows = Table.of(
                Column.of("text", "in the seller's words", Kind.KEY),
                Column.of("sets", "sets", Kind.COUNT),
                Column.of("claimed", "claimed", Kind.TEXT),
                Column.of("sureness", "how sure", Kind.RATIO),
                Column.of("words", "by the words", Kind.TEXT).asDroppable());
        for (ClaimWords w : words) {
            rows.row(w.text(), w.sets(), w.claim(), w.sureness(), w.decidedBy());
        }
        return rows.build();
    }

    /** Headings that nothing was read from, and remarks that were not understood well. */
    private List<String> lines() {
        List<String> headings = new ArrayList<>();
        for (TableReading table : manifest.tables()) {
            for (ColumnReading c : table.columns()) {
                String line = "  " + quoted(c.heading()) + " = \"none\"";
                boolean unknown = c.field() == null && c.words().isEmpty();
                if (unknown && !c.heading().isBlank() && !headings.contains(line)) {
                    headings.add(line);
                }
            }
        }
        List<String> remarks = words.stream()
                .filter(w -> w.sureness() < NOT_SURE)
                .map(w -> "  " + quoted(w.text()) + " = \"" + w.claim().code() + "\"")
                .toList();
        List<String> lines = new ArrayList<>();
        add(lines, "  [columns]", "  # one of " + ManifestReader.FIELDS, headings);
        String codes = Claim.BUILT_IN.keySet().stream().map(Claim::code).collect(Collectors.joining(", "));
        add(lines, "  [symptoms]", "  # one of " + codes, remarks);
        return lines;
    }

    private static void add(List<String> lines, String table, String comment, List<String> entries) {
        if (!entries.isEmpty()) {
            lines.add(table);
            lines.add(comment);
            lines.addAll(entries.subList(0, Math.min(MOST_LINES, entries.size())));
            if (entries.size() > MOST_LINES) {
                lines.add("  # and " + (entries.size() - MOST_LINES) + " more");
            }
        }
    }

    /** A key of TOML. */
    private static String quoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                default -> out.append(c);
            }
        }
        return out.append('"').toString();
    }

    /** The keys {@code tables} and {@code words}. */
    void addTo(Map<String, @Nullable Object> json) {
        List<Map<String, @Nullable Object>> tables = new ArrayList<>();
        for (TableReading table : manifest.tables()) {
            List<Map<String, @Nullable Object>> columns = new ArrayList<>();
            for (ColumnReading c : table.columns()) {
                Map<String, @Nullable Object> column = new LinkedHashMap<>();
                column.put("column", c.letter());
                column.put("heading", c.heading());
                column.put("field", c.field());
                column.put("sureness", c.field() == null ? null : Double.valueOf(Math.min(1, c.score())));
                column.put("words", c.words());
                columns.add(column);
            }
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("sheet", table.sheet());
            one.put("header_row", table.headerRow());
            one.put("sets", table.sets());
            one.put("columns", columns);
            tables.add(one);
        }
        json.put("tables", tables);
        List<Map<String, @Nullable Object>> remarks = new ArrayList<>();
        for (ClaimWords w : words) {
            Map<String, @Nullable Object> remark = new LinkedHashMap<>();
            remark.put("text", w.text());
            remark.put("sets", w.sets());
            remark.put("claimed", w.claim().code());
            remark.put("sureness", w.sureness());
            remark.put("words", w.decidedBy());
            remark.put("others", w.others().stream().map(Claim::code).toList());
            remarks.add(remark);
        }
        json.put("words", remarks);
    }
}
