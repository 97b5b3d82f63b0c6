package org.salvedge.worth.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;

/** Where a forecaster goes wrong: its scores by kind of lot, and where outcomes fall in what it said. */
final class Diagnosis {
    private static final int BINS = 10;

    /** Width of the central 80 % of a normal law, in standard deviations. */
    private static final double TEN_TO_NINETY = 2.563;

    private Diagnosis() {}

    static String markdown(List<Judged> lots) {
        Map<String, Predicate<Judged>> groups = new LinkedHashMap<>();
        for (World world : World.values()) {
            groups.put(world.title(), lot -> lot.world() == world);
            if (world.knobs().badSupplier()) {
                groups.put("- its bad supplier, " + world.title(), lot -> lot.world() == world && lot.spoiled());
                groups.put("- its others, " + world.title(), lot -> lot.world() == world && !lot.spoiled());
            }
        }
        groups.put("under 1/3 of models known", lot -> lot.known() < 1 / 3.0);
        groups.put("1/3 to 2/3 known", lot -> lot.known() >= 1 / 3.0 && lot.known() < 2 / 3.0);
        groups.put("over 2/3 known", lot -> lot.known() >= 2 / 3.0);
        groups.put("under 60 sets", lot -> lot.sets() < 60);
        groups.put("60 to 120 sets", lot -> lot.sets() >= 60 && lot.sets() < 120);
        groups.put("from 120 sets", lot -> lot.sets() >= 120);
        groups.put("true mean under 20 a set", lot -> lot.truth().mean() < 20 * lot.sets());
        groups.put(
                "20 to 45 a set",
                lot -> lot.truth().mean() >= 20 * lot.sets() && lot.truth().mean() < 45 * lot.sets());
        groups.put("from 45 a set", lot -> lot.truth().mean() >= 45 * lot.sets());
        StringBuilder out = new StringBuilder(
                "| lots | n | in 80 % | below it | above it | width | CRPS | bias % | missed % | error of the mean, % rms | of it common to a shop | width needed |\n"
                        + "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        groups.forEach((name, group) -> {
            List<Judged> some = lots.stream().filter(group).toList();
            if (!some.isEmpty()) {
                row(out, name, some);
            }
        });
        return out.append(histogram(lots)).toString();
    }

    private static void row(StringBuilder out, String name, List<Judged> lots) {
        Scores s = Scores.of(lots);
        double below =
                Figure.share(lots, l -> l.outcome() < l.said().quantile(0.1)).value();
        double above =
                Figure.share(lots, l -> l.outcome() > l.said().quantile(0.9)).value();
        double squares = Figure.ratio(
                        lots,
                        l -> Math.pow(l.said().mean() - l.truth().mean(), 2),
                        l -> Math.pow(l.truth().mean(), 2))
                .value();
        out.append(String.format(
                Locale.ROOT,
                "| %s | %d | %.0f (%.1f) | %.0f | %.0f | %.2f | %.2f (%.2f) | %.0f (%.0f) | %.0f (%.0f) | %.0f | %.0f | %.2f |%n",
                name,
                lots.size(),
                100 * s.in80().value(),
                100 * s.in80().error(),
                100 * below,
                100 * above,
                s.width().value(),
                s.crps().value(),
                s.crps().error(),
                100 * s.bias().value(),
                100 * s.bias().error(),
                100 * s.missed().value(),
                100 * s.missed().error(),
                100 * Math.sqrt(squares),
                100 * Math.sqrt(common(lots)),
                widthNeeded(lots)));
    }

    /** Squared relative error of the shops' summed means, each shop weighing as its lots do. */
    private static double common(List<Judged> lots) {
        Map<String, double[]> shops = new LinkedHashMap<>();
        for (Judged lot : lots) {
            double[] sums = shops.computeIfAbsent(lot.world() + "/" + lot.shop(), k -> new double[3]);
            sums[0] += lot.said().mean() - lot.truth().mean();
            sums[1] += Math.pow(lot.truth().mean(), 2);
            sums[2]++;
        }
        double top = 0;
        double bottom = 0;
        for (double[] sums : shops.values()) {
            top += sums[0] * sums[0] / sums[2];
            bottom += sums[1];
        }
        return top / bottom;
    }

    /** Width that the oracle's would have with the errors of the mean added to it, over the oracle's. */
    private static double widthNeeded(List<Judged> lots) {
        double oracle = 0;
        double errors = 0;
        for (Judged lot : lots) {
            oracle += Math.pow(lot.width(lot.truth()), 2);
            errors += Math.pow(TEN_TO_NINETY * (lot.said().mean() - lot.truth().mean()), 2);
        }
        return Math.sqrt(1 + errors / oracle);
    }

    /** Shares of outcomes by the chance that was given to less; all alike when the forecaster is calibrated. */
    private static String histogram(List<Judged> lots) {
        int[] n = new int[BINS];
        for (Judged lot : lots) {
            n[(int) Math.min(BINS - 1.0, Math.floor(lot.said().below(lot.outcome()) * BINS))]++;
        }
        StringBuilder out = new StringBuilder("\nOutcomes by tenth of what was said, %:");
        for (int count : n) {
            out.append(String.format(Locale.ROOT, " %.0f", 100.0 * count / lots.size()));
        }
        return out.append('\n').toString();
    }
}
