package org.salvedge.manifest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** Compares readings with those that a careful person would agree on, and counts. */
final class ManifestJudge {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** What was asked of each field, and how often it was right. */
    final Map<String, int[]> score = new TreeMap<>();

    final List<String> differences = new ArrayList<>();

    private final ManifestReader reader =
            new ManifestReader(Settings.defaults(Currency.getInstance("EUR"), ZoneId.of("UTC")));

    static ManifestJudge over(Path folder) throws IOException {
        ManifestJudge judge = new ManifestJudge();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path truth : files.filter(f -> f.toString().endsWith(".expected.json"))
                    .sorted()
                    .toList()) {
                JsonNode expected = JSON.readTree(truth.toFile());
                judge.judge(folder.resolve(expected.get("file").asText()), expected);
            }
        }
        return judge;
    }

    private void judge(Path file, JsonNode expected) {
        Manifest got = null;
        int status;
        try {
            got = reader.read(file, null);
            status = got.problems().isEmpty() ? 0 : 1;
        } catch (Refused e) {
            status = 3;
        }
        boolean right = false;
        for (JsonNode s : expected.get("exit")) {
            right |= s.asInt() == status;
        }
        count("status", right, file.getFileName() + ": status " + status);
        if (got == null || !expected.has("sets")) {
            return;
        }
        int shift = lineShift(got, expected);
        List<ListedSet> left = new ArrayList<>(got.sets());
        for (JsonNode want : expected.get("sets")) {
            ListedSet best = best(left, want, shift);
            boolean optional = want.path("optional").asBoolean();
            if (best == null) {
                if (!optional) {
                    count("sets found", false, file.getFileName() + ": no set at line " + want.get("line"));
                }
                continue;
            }
            left.remove(best);
            count("sets found", true, "");
            compare(file, best, want);
        }
        for (int i = 0; i < got.sets().size(); i++) {
            count("sets real", i >= left.size(), file.getFileName() + ": a set that is none");
        }
        problems(file, got, expected, shift);
    }

    private static int lineShift(Manifest got, JsonNode expected) {
        int allowed = expected.path("line_shift").asInt();
        if (allowed == 0 || got.sets().isEmpty() || expected.get("sets").isEmpty()) {
            return 0;
        }
        return got.sets().get(0).line()
                                - expected.get("sets").get(0).get("line").asInt()
                        == allowed
                ? allowed
                : 0;
    }

    private static @Nullable ListedSet best(List<ListedSet> left, JsonNode want, int shift) {
        ListedSet best = null;
        int most = -1;
        for (ListedSet s : left) {
            if (s.line() != want.get("line").asInt() + shift
                    || want.has("sheet")
                            && !s.sheet().isEmpty()
                            && !s.sheet().equals(want.get("sheet").asText())) {
                continue;
            }
            int alike = (same(s.model(), want.get("model")) ? 3 : 0) + (same(s.serial(), want.get("serial")) ? 2 : 0);
            if (alike > most) {
                most = alike;
                best = s;
            }
        }
        return best;
    }

    private void compare(Path file, ListedSet got, JsonNode want) {
        String at = file.getFileName() + ", line " + got.line() + ": ";
        count("maker", same(got.maker(), want.get("maker")), at + "maker " + got.maker());
        count("model", same(got.model(), want.get("model")), at + "model " + got.model());
        count("serial", same(got.serial(), want.get("serial")), at + "serial " + got.serial());
        count("claimed", same(got.claimed().code(), want.get("claimed")), at + "claimed " + got.claimed());
        count(
                "inches",
                near(got.inches() == null ? null : got.inches().toDouble(), want.get("inches"), .0501),
                at + "inches " + got.inches());
        count(
                "asking",
                near(got.asking() == null ? null : got.asking().doubleValue(), want.get("asking"), .00501),
                at + "asking " + got.asking());
    }

    private void problems(Path file, Manifest got, JsonNode expected, int shift) {
        JsonNode problems = expected.path("problems");
        for (JsonNode must : problems.path("must")) {
            boolean told = got.problems().stream().anyMatch(p -> at(p, must, shift));
            count("problems told", told, file.getFileName() + ": row " + must.get("row") + " is not reported");
        }
        for (Problem p : got.problems()) {
            boolean allowed = p.row() == 0;
            for (JsonNode list : new JsonNode[] {problems.path("must"), problems.path("may")}) {
                for (JsonNode row : list) {
                    allowed |= at(p, row, shift);
                }
            }
            count("problems true", allowed, file.getFileName() + ": false alarm: " + p);
        }
    }

    private static boolean at(Problem p, JsonNode row, int shift) {
        boolean sheet = !row.has("sheet")
                || p.sheet() == null
                || row.get("sheet").asText().equals(p.sheet());
        return sheet && row.get("row").asInt() + shift == p.row();
    }

    private static boolean same(@Nullable String got, @Nullable JsonNode want) {
        for (JsonNode w : options(want)) {
            if (w.isNull()
                    ? got == null || got.isEmpty()
                    : got != null && flat(got).equals(flat(w.asText()))) {
                return true;
            }
        }
        return false;
    }

    private static boolean near(@Nullable Double got, @Nullable JsonNode want, double tolerance) {
        for (JsonNode w : options(want)) {
            if (w.isNull() ? got == null : got != null && Math.abs(got - w.asDouble()) <= tolerance) {
                return true;
            }
        }
        return false;
    }

    private static List<JsonNode> options(@Nullable JsonNode want) {
        if (want == null || want.isNull()) {
            return List.of(JSON.nullNode());
        }
        if (want.has("any_of")) {
            List<JsonNode> all = new ArrayList<>();
            want.get("any_of").forEach(all::add);
            return all;
        }
        return List.of(want);
    }

    private static String flat(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC)
                .replaceAll("\\s+", " ")
                .strip()
                .toLowerCase(Locale.ROOT);
    }

    private void count(String what, boolean right, String difference) {
        int[] c = score.computeIfAbsent(what, k -> new int[2]);
        c[0] += right ? 1 : 0;
        c[1]++;
        if (!right) {
            differences.add(difference);
        }
    }

    double share(String what) {
        int[] c = score.getOrDefault(what, new int[] {1, 1});
        return (double) c[0] / c[1];
    }

    int asked(String what) {
        return score.getOrDefault(what, new int[2])[1];
    }

    String report() {
        StringBuilder s = new StringBuilder();
        score.forEach((what, c) -> s.append(
                String.format(Locale.ROOT, "   %-14s %5d of %5d  %5.1f %%%n", what, c[0], c[1], 100.0 * c[0] / c[1])));
        return s.toString();
    }
}
