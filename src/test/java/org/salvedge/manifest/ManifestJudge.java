package org.salvedge.manifest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** Compares what was read of a file with the reading that a careful person would agree on, written down beside it. */
final class ManifestJudge {
    static final List<String> FIELDS =
            List.of("maker", "model", "inches", "serial", "claimed", "claimed_text", "asking");

    static final Settings SETTINGS = Settings.defaults(Currency.getInstance("EUR"), ZoneOffset.UTC);

    private final ObjectMapper json = new ObjectMapper();

    /** Judges all the files of a folder that have a reading beside them. */
    static Score over(Path folder) throws IOException {
        Score score = new Score();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path expected : files.filter(f -> f.toString().endsWith(".expected.json"))
                    .sorted()
                    .toList()) {
                score.add(new ManifestJudge().judge(expected));
            }
        }
        return score;
    }

    /** Right and all answers, by what was asked. */
    static final class Score {
        final Map<String, int[]> counts = new LinkedHashMap<>();
        final List<String> differences = new ArrayList<>();

        void count(String what, boolean right, String miss) {
            int[] c = counts.computeIfAbsent(what, k -> new int[2]);
            c[0] += right ? 1 : 0;
            c[1]++;
            if (!right) {
                differences.add(what + ": " + miss);
            }
        }

        void add(Score other) {
            other.counts.forEach((what, c) -> {
                int[] mine = counts.computeIfAbsent(what, k -> new int[2]);
                mine[0] += c[0];
                mine[1] += c[1];
            });
            differences.addAll(other.differences);
        }

        double share(String what) {
            int[] c = counts.getOrDefault(what, new int[] {1, 1});
            return c[1] == 0 ? 1 : (double) c[0] / c[1];
        }

        int asked(String what) {
            return counts.getOrDefault(what, new int[2])[1];
        }

        String report() {
            StringBuilder s = new StringBuilder();
            counts.forEach((what, c) -> s.append(String.format(
                    Locale.ROOT, "%-14s %6.2f %%  (%d of %d)%n", what, 100.0 * c[0] / Math.max(1, c[1]), c[0], c[1])));
            return s.toString();
        }
    }

    /** Judges one file by its {@code .expected.json}. */
    Score judge(Path expectedFile) throws IOException {
        JsonNode expected = json.readTree(expectedFile.toFile());
        Path file = expectedFile.resolveSibling(expected.get("file").asText());
        Score score = new Score();
        String name = file.getFileName().toString();
        Manifest manifest;
        int status;
        try {
            manifest = new ManifestReader(SETTINGS)
                    .read(file, expected.path("password").asText(null));
            status = manifest.problems().isEmpty() ? 0 : 1;
        } catch (Refused e) {
            score.count("status", accepts(expected.get("exit"), 3), name + " refused: " + e.getMessage());
            int sets = expected.path("sets").size();
            for (int i = 0; i < sets; i++) {
                score.count("sets found", accepts(expected.get("exit"), 3), name + " refused");
            }
            return score;
        }
        score.count(
                "status",
                accepts(expected.get("exit"), status),
                name + " status " + status + ", expected " + expected.get("exit") + " "
                        + manifest.problems().stream().limit(3).toList());
        judgeColumns(expected, manifest, name, score);
        judgeSets(expected, manifest, name, score);
        judgeProblems(expected, manifest, name, score);
        return score;
    }

    private static boolean accepts(@Nullable JsonNode exits, int status) {
        if (exits == null) {
            return true;
        }
        for (JsonNode exit : exits) {
            if (exit.asInt() == status) {
                return true;
            }
        }
        return false;
    }

    private static void judgeColumns(JsonNode expected, Manifest manifest, String name, Score score) {
        if (expected.has("sheet")) {
            score.count("sheet", oneOf(expected.get("sheet"), manifest.sheet()), name + " sheet " + manifest.sheet());
        }
        if (expected.has("header_row")) {
            int shift = expected.path("line_shift").asInt(0);
            boolean right = false;
            for (JsonNode row : expected.get("header_row")) {
                right |= row.asInt() == manifest.headerRow() || row.asInt() + shift == manifest.headerRow();
            }
            score.count("header row", right, name + " header row " + manifest.headerRow());
        }
        expected.path("columns").properties().forEach(entry -> {
            String found = manifest.columns().get(entry.getKey());
            score.count(
                    "columns",
                    oneOf(entry.getValue(), found),
                    name + " column " + entry.getKey() + " = " + found + ", expected " + entry.getValue());
        });
    }

    private static boolean oneOf(JsonNode list, @Nullable String found) {
        if (list.isNull()) {
            return found == null;
        }
        if (!list.isArray()) {
            return same(list.asText(), found);
        }
        for (JsonNode choice : list) {
            if (choice.isNull() ? found == null || found.isEmpty() : same(choice.asText(), found)) {
                return true;
            }
        }
        return false;
    }

    private static void judgeSets(JsonNode expected, Manifest manifest, String name, Score score) {
        List<ListedSet> left = new ArrayList<>(manifest.sets());
        int shift = expected.path("line_shift").asInt(0);
        List<JsonNode> unmatched = new ArrayList<>();
        for (JsonNode want : expected.path("sets")) {
            ListedSet match = take(left, want, shift, true);
            if (match == null) {
                unmatched.add(want);
            } else {
                score.count("sets found", true, "");
                judgeFields(want, match, name, score);
            }
        }
        for (JsonNode want : unmatched) {
            ListedSet match = take(left, want, shift, false);
            if (match != null) {
                score.count("sets found", true, "");
                judgeFields(want, match, name, score);
            } else if (!want.path("optional").asBoolean(false)) {
                score.count("sets found", false, name + " line " + want.path("line") + " " + want.path("model"));
            }
        }
        for (ListedSet extra : left) {
            score.count("sets real", false, name + " line " + extra.line() + " " + extra.maker() + " " + extra.model());
        }
        int real = manifest.sets().size() - left.size();
        for (int i = 0; i < real; i++) {
            score.count("sets real", true, "");
        }
    }

    private static @Nullable ListedSet take(List<ListedSet> left, JsonNode want, int shift, boolean byModel) {
        int line = want.path("line").asInt();
        ListedSet best = null;
        for (ListedSet set : left) {
            boolean lineFits = set.line() == line || shift != 0 && set.line() == line + shift;
            boolean sheetFits = !want.has("sheet")
                    || set.sheet().isEmpty()
                    || same(want.get("sheet").asText(), set.sheet());
            if (lineFits && sheetFits && (!byModel || fits(want.path("model"), set.model()))) {
                boolean serialFits = fits(want.path("serial"), set.serial());
                if (best == null || serialFits && !fits(want.path("serial"), best.serial())) {
                    best = set;
                }
            }
        }
        if (best != null) {
            left.remove(best);
        }
        return best;
    }

    private static void judgeFields(JsonNode want, ListedSet set, String name, Score score) {
        String at = name + " line " + set.line() + " ";
        for (String field : FIELDS) {
            if (want.has(field)) {
                Object found = value(set, field);
                score.count(
                        field,
                        fits(field, want.get(field), found),
                        at + found + ", expected " + want.get(field) + " text " + set.claimedText());
            }
        }
    }

    private static @Nullable Object value(ListedSet set, String field) {
        return switch (field) {
            case "maker" -> set.maker();
            case "model" -> set.model();
            case "inches" -> set.inches() == null ? null : set.inches().number();
            case "serial" -> set.serial();
            case "claimed" -> set.claimed().code();
            case "claimed_text" -> set.claimedText();
            default -> set.asking();
        };
    }

    private static boolean fits(JsonNode want, @Nullable Object found) {
        return fits("", want, found);
    }

    private static boolean fits(String field, JsonNode want, @Nullable Object found) {
        if (want.isObject() && want.has("any_of")) {
            for (JsonNode choice : want.get("any_of")) {
                if (fits(field, choice, found)) {
                    return true;
                }
            }
            return false;
        }
        if (want.isNull() || want.isMissingNode()) {
            return found == null || found.toString().isEmpty();
        }
        if (found == null) {
            return want.isTextual() && want.asText().isEmpty();
        }
        if (want.isNumber()) {
            BigDecimal off = new BigDecimal(found.toString())
                    .subtract(want.decimalValue())
                    .abs();
            return off.compareTo(new BigDecimal(field.equals("inches") ? "0.0501" : "0.00501")) <= 0;
        }
        return field.equals("claimed_text")
                ? folded(found.toString()).contains(folded(want.asText()))
                : same(want.asText(), found.toString());
    }

    private static boolean same(String a, @Nullable String b) {
        return b != null && folded(a).equals(folded(b));
    }

    private static String folded(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC)
                .replaceAll("[\\s\\u00a0]+", " ")
                .strip()
                .toLowerCase(Locale.ROOT);
    }

    private static void judgeProblems(JsonNode expected, Manifest manifest, String name, Score score) {
        int shift = expected.path("line_shift").asInt(0);
        JsonNode must = expected.path("problems").path("must");
        JsonNode may = expected.path("problems").path("may");
        for (JsonNode row : must) {
            boolean told = manifest.problems().stream().anyMatch(p -> isAt(p, row, shift));
            score.count("must report", told, name + " row " + row);
        }
        for (Problem problem : manifest.problems()) {
            boolean wanted = stands(must, problem, shift) || stands(may, problem, shift) || problem.row() == 0;
            score.count("no false alarm", wanted, problem.toString());
        }
        for (JsonNode row : expected.path("ignored")) {
            boolean told = manifest.problems().stream().anyMatch(p -> isAt(p, row, shift));
            boolean read = manifest.sets().stream()
                    .anyMatch(s -> s.line() == row.path("row").asInt()
                            && (!row.has("sheet") || same(row.get("sheet").asText(), s.sheet())));
            score.count("ignored", !told && !read, name + " row " + row);
        }
    }

    private static boolean stands(JsonNode rows, Problem problem, int shift) {
        for (JsonNode row : rows) {
            if (isAt(problem, row, shift)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isAt(Problem problem, JsonNode row, int shift) {
        int wanted = row.path("row").asInt();
        boolean fits = problem.row() == wanted || shift != 0 && problem.row() == wanted + shift;
        return fits
                && (!row.has("sheet")
                        || problem.sheet() == null
                        || same(row.get("sheet").asText(), problem.sheet()));
    }
}
