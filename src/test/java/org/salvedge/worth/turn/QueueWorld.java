package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.salvedge.stats.LogNormal;
import org.salvedge.stats.StopRule;

/** An invented shop whose every parameter is known: families, faults, how tries go, what sets bring. */
final class QueueWorld {
    static final List<String> FAULTS = List.of(
            "row_drive",
            "column_drive",
            "timing_board",
            "backlight",
            "power_board",
            "main_board",
            "firmware",
            "panel_broken",
            "ports_audio",
            "none_found",
            "unknown");
    static final List<String> CLAIMS = List.of(
            "horizontal_lines",
            "vertical_lines",
            "half_screen",
            "no_picture",
            "dead",
            "boot_loop",
            "no_sound",
            "cracked",
            "untested",
            "customer_return");
    private static final double[] SHARE = {.17, .09, .09, .18, .13, .09, .06, .10, .04, .05, .0};
    private static final double[] SAVED = {.55, .13, .68, .76, .74, .66, .70, .01, .70, .93, .1};
    private static final double[] MEDIAN = {42, 55, 32, 80, 38, 32, 20, 30, 28, 2, 20};
    private static final double[] LOOK = {11, 12, 14, 9, 12, 16, 12, 4, 9, 14, 25};
    private static final double[] PARTS = {1, 6, 24, 26, 14, 30, 0, 0, 5, 0, 0};
    private static final int[] HONEST = {0, 1, 2, 3, 4, 5, 5, 7, 6, 9, 8};
    private static final double SIGMA = 0.5;
    static final double FEES = 0.12;
    static final double SHIPPING_SHARE = 0.08;
    static final double PACKING = 12;
    static final double STRIPPING = 18;
    static final double LABOUR = 24;
    private static final int FAMILIES = 16;
    private static final int SUPPLIERS = 6;

    final double[] price = new double[FAMILIES];
    final double[] inches = new double[FAMILIES];
    private final double[][] craft = new double[FAMILIES][FAULTS.size()];
    private final double[] pace = new double[FAMILIES];
    private final double[][] weak = new double[FAMILIES][FAULTS.size()];
    private final double[][] lean = new double[SUPPLIERS][FAULTS.size()];
    private final double[] honesty = new double[SUPPLIERS];
    final double strip;

    QueueWorld(SplittableRandom r) {
        double[] sizes = {32, 40, 43, 49, 50, 55, 65, 75};
        for (int f = 0; f < FAMILIES; f++) {
            inches[f] = sizes[r.nextInt(sizes.length)];
            price[f] = 190 * Math.pow(inches[f] / 50, 1.7) * Math.exp(.25 * r.nextGaussian());
            pace[f] = .18 * r.nextGaussian();
            for (int k = 0; k < FAULTS.size(); k++) {
                craft[f][k] = .5 * r.nextGaussian();
                weak[f][k] = Math.exp(.5 * r.nextGaussian());
            }
        }
        for (int s = 0; s < SUPPLIERS; s++) {
            honesty[s] = .45 + .45 * r.nextDouble();
            for (int k = 0; k < FAULTS.size(); k++) {
                lean[s][k] = Math.exp(.3 * r.nextGaussian());
            }
        }
        strip = .14 + .08 * r.nextDouble();
    }

    /** One set as it really is. Times and prices are its fate. */
    record Set(
            int family,
            int supplier,
            int lot,
            int claim,
            int fault,
            int day,
            double lotEffect,
            double look,
            boolean solvable,
            double ends,
            double sold,
            double stripped,
            double parts) {}

    Set draw(SplittableRandom r, int lot, int supplier, double lotEffect, int day) {
        int family = Math.min(FAMILIES - 1, (int) (FAMILIES * Math.pow(r.nextDouble(), 1.3)));
        double[] shares = shares(family, supplier);
        int fault = pick(r, shares);
        int claim = r.nextDouble() < honesty[supplier]
                ? HONEST[fault]
                : pick(r, new double[] {1, 1, 1, 1, 1, 1, 1, .3, 5, 3});
        boolean solvable = r.nextDouble() < chance(family, fault, lotEffect);
        double ends = Math.exp(Math.log(median(family, fault) * (solvable ? 1 : 1.35)) + SIGMA * r.nextGaussian());
        double look = Math.exp(Math.log(LOOK[fault]) + .4 * r.nextGaussian());
        return new Set(
                family,
                supplier,
                lot,
                claim,
                fault,
                day,
                lotEffect,
                look,
                solvable,
                ends,
                price[family] * Math.exp(.12 * r.nextGaussian() - .0072),
                strip * price[family] * Math.exp(.4 * r.nextGaussian() - .08),
                PARTS[fault] * Math.exp(.3 * r.nextGaussian() - .045));
    }

    double net(Set s, boolean saved) {
        return saved
                ? s.sold() * (1 - FEES - SHIPPING_SHARE) - PACKING * LABOUR / 60
                : s.stripped() - STRIPPING * LABOUR / 60;
    }

    private double[] shares(int family, int supplier) {
        double[] shares = new double[FAULTS.size()];
        for (int k = 0; k < shares.length; k++) {
            shares[k] = SHARE[k] * weak[family][k] * lean[supplier][k];
        }
        return shares;
    }

    private double chance(int family, int fault, double lotEffect) {
        double logit = Math.log(SAVED[fault] / (1 - SAVED[fault])) + craft[family][fault] + lotEffect;
        return 1 / (1 + Math.exp(-logit));
    }

    private double median(int family, int fault) {
        return MEDIAN[fault] * Math.exp(pace[family]);
    }

    private static int pick(SplittableRandom r, double[] weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        double u = r.nextDouble() * sum;
        for (int i = 0; i < weights.length - 1; i++) {
            u -= weights[i];
            if (u < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }

    static String family(int f) {
        return "F" + (10 + f);
    }

    /** What the shop sees of a set. */
    static BenchModel.OnBench seen(Set s) {
        return new BenchModel.OnBench(
                family(s.family()), 0, CLAIMS.get(s.claim()), "S" + s.supplier() + " " + s.lotEffect(), null, false, 0);
    }

    /** Knows every parameter, the lots' common fate included, and no set's own. */
    final class Oracle implements BenchKnowledge {
        private final java.util.Map<List<Object>, StopRule> rules = new java.util.HashMap<>();
        private final java.util.Map<List<Object>, double[]> odds = new java.util.HashMap<>();

        private int family(BenchModel.OnBench set) {
            return Integer.parseInt(set.family().substring(1)) - 10;
        }

        private double lotEffect(BenchModel.OnBench set) {
            return Double.parseDouble(set.supplier().substring(3));
        }

        @Override
        public List<String> faults() {
            return FAULTS;
        }

        @Override
        public double[] odds(BenchModel.OnBench set) {
            int supplier = Integer.parseInt(set.supplier().substring(1, 2));
            return odds.computeIfAbsent(List.of(set.family(), set.claim(), supplier), k -> {
                double[] shares = shares(family(set), supplier);
                int claim = CLAIMS.indexOf(set.claim());
                double[] random = {1, 1, 1, 1, 1, 1, 1, .3, 5, 3};
                double sum = 0;
                for (int f = 0; f < shares.length; f++) {
                    shares[f] *= honesty[supplier] * (HONEST[f] == claim ? 1 : 0)
                            + (1 - honesty[supplier]) * random[claim] / 15.3;
                    sum += shares[f];
                }
                for (int f = 0; f < shares.length; f++) {
                    shares[f] /= sum;
                }
                return shares;
            });
        }

        @Override
        public double look(int fault) {
            return LOOK[fault] * Math.exp(.08);
        }

        @Override
        public double parts(BenchModel.OnBench set, int fault) {
            return PARTS[fault];
        }

        @Override
        public double stripped(BenchModel.OnBench set) {
            return strip * price[family(set)] - STRIPPING * LABOUR / 60;
        }

        @Override
        public double saving(BenchModel.OnBench set) {
            double p = price[family(set)];
            return p * (1 - FEES - SHIPPING_SHARE) - PACKING * LABOUR / 60 - (strip * p - STRIPPING * LABOUR / 60);
        }

        @Override
        public StopRule rule(BenchModel.OnBench set, int fault) {
            return rules.computeIfAbsent(
                    List.of(set.family(), set.supplier(), fault),
                    k -> StopRule.of(TrySpan.minutes(), success(set, fault), failure(set, fault)));
        }

        @Override
        public double[] success(BenchModel.OnBench set, int fault) {
            return TrySpan.cumulative(
                    chance(family(set), fault, lotEffect(set)),
                    new LogNormal(Math.log(median(family(set), fault)), SIGMA),
                    0,
                    1e6);
        }

        @Override
        public double[] failure(BenchModel.OnBench set, int fault) {
            return TrySpan.cumulative(
                    1 - chance(family(set), fault, lotEffect(set)),
                    new LogNormal(Math.log(1.35 * median(family(set), fault)), SIGMA),
                    0,
                    1e6);
        }
    }

    /** Lots of about forty sets, so many sets a day, over some days. */
    List<Set> arrivals(SplittableRandom r, int from, int to, double aDay, int firstLot) {
        List<Set> sets = new ArrayList<>();
        int lot = firstLot;
        double due = 0;
        for (int day = from; day < to; day++) {
            due += aDay;
            if (due >= 40) {
                int supplier = r.nextInt(SUPPLIERS);
                double effect = Math.round(.3 * r.nextGaussian() * 1000) / 1000.0;
                for (; due >= 1; due--) {
                    sets.add(draw(r, lot, supplier, effect, day));
                }
                lot++;
            }
        }
        return sets;
    }
}
