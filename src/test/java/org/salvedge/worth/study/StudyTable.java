package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Scores as Markdown, standard errors in brackets. */
final class StudyTable {
    private StudyTable() {}

    /** One table a world, that in which the first forecaster does worst first, then one over all worlds. */
    static String markdown(Map<String, List<Judged>> judged) {
        String first = judged.keySet().iterator().next();
        List<World> worlds = new ArrayList<>();
        for (World world : World.values()) {
            if (!in(judged, first, world).isEmpty()) {
                worlds.add(world);
            }
        }
        worlds.sort(Comparator.comparingDouble(
                (World w) -> -Scores.of(in(judged, first, w)).crps().value()));
        StringBuilder out = new StringBuilder();
        out.append(
                "Worst world: **%s**; the worlds below stand in order, the worst score of %s over the oracle's first.\n"
                        .formatted(worlds.get(0).title(), first));
        for (World world : worlds) {
            out.append("\n**%s**: %s %d shops.\n\n"
                    .formatted(world.title(), world.description(), shops(in(judged, first, world))));
            head(out);
            judged.forEach((name, lots) -> row(out, name, in(judged, name, world)));
        }
        out.append("\n**All worlds**\n\n");
        head(out);
        Map<String, List<Judged>> even = new LinkedHashMap<>();
        judged.forEach((name, lots) ->
                even.put(name, lots.stream().filter(lot -> !lot.extra()).toList()));
        even.forEach((name, lots) -> row(out, name, lots));
        out.append(reliability(even));
        return out.toString();
    }

    private static List<Judged> in(Map<String, List<Judged>> judged, String name, World world) {
        return judged.getOrDefault(name, List.of()).stream()
                .filter(lot -> lot.world() == world)
                .toList();
    }

    private static long shops(List<Judged> lots) {
        return lots.stream().map(Judged::shop).distinct().count();
    }

    private static void head(StringBuilder out) {
        out.append(
                "| forecaster | lots | in 50 % | in 80 % | in 90 % | width | CRPS | bias % | missed % | Brier | kept % |\n");
        out.append("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
    }

    private static void row(StringBuilder out, String name, List<Judged> lots) {
        Scores s = Scores.of(lots);
        out.append("| %s | %d |".formatted(name, s.lots()));
        cell(out, s.in50(), 100, 0);
        cell(out, s.in80(), 100, 0);
        cell(out, s.in90(), 100, 0);
        cell(out, s.width(), 1, 2);
        cell(out, s.crps(), 1, 2);
        cell(out, s.bias(), 100, 0);
        cell(out, s.missed(), 100, 0);
        cell(out, s.brier(), 1, 3);
        cell(out, s.promise(), 100, 0);
        out.append('\n');
    }

    private static void cell(StringBuilder out, Figure f, double scale, int digits) {
        String form = "%." + digits + "f";
        int finer = digits == 0 ? 1 : digits;
        String errorForm = "%." + finer + "f";
        out.append(" ")
                .append(String.format(Locale.ROOT, form, f.value() * scale))
                .append(" (")
                .append(String.format(Locale.ROOT, errorForm, f.error() * scale))
                .append(") |");
    }

    private static String reliability(Map<String, List<Judged>> judged) {
        StringBuilder out =
                new StringBuilder("\n**P(loss) at the asking price**: share that lost, by what was foreseen\n\n");
        out.append("| foreseen |");
        judged.keySet().forEach(name -> out.append(" %s: n | foreseen %% | lost %% |".formatted(name)));
        out.append("\n| --- |")
                .append(" --- | --- | --- |".repeat(judged.size()))
                .append('\n');
        for (int bin = 0; bin < 5; bin++) {
            double low = bin / 5.0;
            double high = bin == 4 ? 1.01 : low + 0.2;
            out.append("| %.0f-%.0f %% |".formatted(low * 100, Math.min(100, high * 100)));
            for (List<Judged> lots : judged.values()) {
                List<Judged> here = lots.stream()
                        .filter(lot -> lot.lossForeseen() >= low && lot.lossForeseen() < high)
                        .toList();
                if (here.isEmpty()) {
                    out.append(" 0 | | |");
                    continue;
                }
                double foreseen = here.stream()
                        .mapToDouble(Judged::lossForeseen)
                        .average()
                        .orElse(0);
                out.append(" %d | %.0f |".formatted(here.size(), 100 * foreseen));
                cell(out, Figure.share(here, Judged::lost), 100, 0);
            }
            out.append('\n');
        }
        return out.toString();
    }
}
