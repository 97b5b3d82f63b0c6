package org.salvedge.worth;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.Interval;
import org.salvedge.stats.Pit;
import org.salvedge.stats.ProportionInterval;

/**
 * How the estimates of past lots held, all together.
 *
 * @param lots finished lots judged
 * @param inside50 how many ended inside the central 50 % interval, and so on
 * @param meanPit 0.5 where estimates are neither too high nor too low; below it they were too high
 * @param bias outcomes over estimates, all lots together, less 1
 * @param crps mean score of the estimates, book currency
 * @param plainCrps that of the plain average, over the lots where there was one; not a number without any
 * @param skill 1 - score over the plain average's, over these lots; 1 is perfect, 0 no better than the plain average
 * @param byLimit bias by how far the limit stood above the hammer price; empty where no bids are kept
 */
public record HindsightVerdict(
        int lots,
        int inside50,
        int inside80,
        int inside90,
        double meanPit,
        double bias,
        double crps,
        double plainCrps,
        double skill,
        List<Margin> byLimit) {
    private static final int FEWEST = 8;
    private static final double LEVEL = 0.95;
    private static final double NARROW = 1.1;

    /**
     * Lots won with this much room.
     *
     * @param ratio mean of limit over hammer
     * @param bias outcomes over estimates, less 1
     */
    public record Margin(String words, int lots, double ratio, double bias) {}

    public HindsightVerdict {
        byLimit = List.copyOf(byLimit);
    }

    public static HindsightVerdict of(List<HeldLot> lots) {
        List<HeldLot.Judged> judged =
                lots.stream().map(HeldLot::judged).flatMap(Stream::ofNullable).toList();
        double[] pit = judged.stream().mapToDouble(HeldLot.Judged::pit).toArray();
        double crps = 0;
        double compared = 0;
        double plain = 0;
        int n = 0;
        for (HeldLot.Judged j : judged) {
            crps += j.crps();
            if (!Double.isNaN(j.plainCrps())) {
                compared += j.crps();
                plain += j.plainCrps();
                n++;
            }
        }
        return new HindsightVerdict(
                judged.size(),
                inside(pit, 0.5),
                inside(pit, 0.8),
                inside(pit, 0.9),
                mean(pit),
                bias(judged),
                judged.isEmpty() ? Double.NaN : crps / judged.size(),
                n == 0 ? Double.NaN : plain / n,
                n == 0 || plain == 0 ? Double.NaN : 1 - compared / plain,
                margins(judged));
    }

    private static int inside(double[] pit, double level) {
        return pit.length == 0 ? 0 : (int) Math.round(Pit.coverage(pit, level) * pit.length);
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return x.length == 0 ? Double.NaN : sum / x.length;
    }

    private static double bias(List<HeldLot.Judged> judged) {
        double came = 0;
        double said = 0;
        for (HeldLot.Judged j : judged) {
            came += j.outcome().toDoubleForStatistics();
            said += j.mean();
        }
        return said == 0 ? Double.NaN : came / said - 1;
    }

    private static List<Margin> margins(List<HeldLot.Judged> judged) {
        List<Margin> margins = new ArrayList<>();
        add(margins, "limit less than 10 % above the hammer", judged, 0, NARROW);
        add(margins, "limit 10 % or more above the hammer", judged, NARROW, Double.POSITIVE_INFINITY);
        return margins;
    }

    private static void add(List<Margin> margins, String words, List<HeldLot.Judged> judged, double from, double to) {
        List<HeldLot.Judged> some =
                judged.stream().filter(j -> ratio(j) >= from && ratio(j) < to).toList();
        if (!some.isEmpty()) {
            double ratio = some.stream().mapToDouble(HindsightVerdict::ratio).sum() / some.size();
            margins.add(new Margin(words, some.size(), ratio, bias(some)));
        }
    }

    private static double ratio(HeldLot.Judged j) {
        return j.limit() == null || j.hammer() == null || j.hammer().isZero()
                ? Double.NaN
                : j.limit().toDoubleForStatistics() / j.hammer().toDoubleForStatistics();
    }

    /** Range in which the true coverage lies, 95 %; null without lots. */
    public @Nullable Interval range(int inside) {
        return lots == 0 ? null : ProportionInterval.WILSON.of(inside, lots, LEVEL);
    }

    /** The verdict in words, good or bad: of the intervals, of the level, against the plain average, of the bids. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        if (lots == 0) {
            words.add(
                    "No lot is finished yet: nothing can be said of the estimates. They are tried only on what came.");
            return words;
        }
        words.add(intervals());
        words.add(level());
        if (Double.isNaN(skill)) {
            words.add("There was no plain average of past sets to compare with.");
        } else if (skill > 0.05) {
            words.add(String.format(
                    Locale.ROOT,
                    "Better than the plain average of past sets: its score (CRPS) is %.0f %% smaller.",
                    skill * 100));
        } else {
            words.add(String.format(
                    Locale.ROOT,
                    skill < -0.05
                            ? "WORSE than the plain average of past sets: its score (CRPS) is %.0f %% larger."
                            : "No better than the plain average of past sets (scores differ by %.0f %%).",
                    Math.abs(skill) * 100));
        }
        if (byLimit.isEmpty()) {
            words.add("Only lots that were won are seen, and one wins where one over-rates. No bids with limit and"
                    + " hammer price are kept for these lots (`bid`), so that cannot be told apart.");
        } else {
            for (Margin m : byLimit) {
                words.add(String.format(
                        Locale.ROOT,
                        "Won with a %s (%d %s, %.2f on average): brought %s against the estimate.",
                        m.words,
                        m.lots,
                        m.lots == 1 ? "lot" : "lots",
                        m.ratio,
                        percent(m.bias)));
            }
            words.add("Only lots that were won are seen, and one wins where one over-rates.");
        }
        return words;
    }

    private String intervals() {
        Interval range = ProportionInterval.WILSON.of(inside80, lots, LEVEL);
        String held = inside80 + " of " + lots + " lots ended inside their 80 % range";
        if (lots < FEWEST) {
            return held + ": too few lots to tell whether the ranges hold.";
        }
        if (range.high() < 0.8) {
            return held + ": the ranges are TOO NARROW. Bid at a higher confidence than you mean.";
        }
        if (range.low() > 0.8) {
            return held + ": the ranges are wider than they need be.";
        }
        return held + ", as many as should within chance.";
    }

    /** With its sign; nothing is plain 0. */
    private static String percent(double share) {
        long whole = Math.round(share * 100);
        return (whole == 0 ? "0" : String.format(Locale.ROOT, "%+d", whole)) + " %";
    }

    private String level() {
        String came = "All together the lots brought " + percent(bias) + " against the estimate";
        double se = Math.sqrt(1.0 / 12 / lots);
        if (meanPit < 0.5 - 2 * se) {
            return came + ": estimates were TOO HIGH (mean place in the range "
                    + String.format(Locale.ROOT, "%.2f", meanPit) + ", should be 0.50).";
        }
        if (meanPit > 0.5 + 2 * se) {
            return came + ": estimates were too low (mean place in the range "
                    + String.format(Locale.ROOT, "%.2f", meanPit) + ", should be 0.50).";
        }
        return came + "; neither too high nor too low beyond chance.";
    }
}
