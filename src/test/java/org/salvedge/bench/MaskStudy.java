package org.salvedge.bench;

import it.unimi.dsi.fastutil.longs.Long2DoubleOpenHashMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.PriorityQueue;

/** Mean number of trials until the culprits are known, over all culprit sets, of the plan and of two plain ways. */
final class MaskStudy {
    private static final int MOST = 8;
    private static final int OPTIMUM = 6;

    private MaskStudy() {}

    /** Trials of the plan for one culprit set. */
    private static final class Plan {
        final int n;
        final double[] prior;
        final Map<List<MaskTrial>, MaskPlan.Answer> answers = new HashMap<>();

        Plan(int n, double[] prior) {
            this.n = n;
            this.prior = prior;
        }

        int trials(int culprits) {
            List<MaskTrial> tried = List.of();
            while (true) {
                List<MaskTrial> key = tried;
                MaskPlan.Answer a = answers.computeIfAbsent(
                        key, k -> MaskPlan.of(new MaskPlan.Question(n, prior, 0, 0, 0, .95, k)));
                if (a.done()) {
                    return tried.size();
                }
                int next = Objects.requireNonNull(a.next());
                List<MaskTrial> more = new ArrayList<>(tried);
                more.add(new MaskTrial(next, (culprits & ~next) == 0));
                tried = List.copyOf(more);
            }
        }
    }

    /** All contacts masked first; then each is opened, and masked again if the picture went. The last may be known by then. */
    static int maskAllThenUnmask(int n, int culprits) {
        int trials = 1;
        int masked = (1 << n) - 1;
        for (int i = 0; i < n; i++) {
            if (masked == 1 << i) {
                break; // somebody is the culprit
            }
            trials++;
            masked &= (culprits >> i & 1) == 1 ? -1 : ~(1 << i);
        }
        return trials;
    }

    /** One more contact masked at a time until the picture is good; then those before the last are opened one at a time. */
    static int oneAtATime(int n, int culprits) {
        int last = Integer.SIZE - 1 - Integer.numberOfLeadingZeros(culprits);
        return n == 1 ? 1 : last + 1 + last;
    }

    /** The least mean by dynamic programming over what is still possible, exact: branches are cut only by a bound below them. */
    static final class Optimum {
        private final int n;
        private final double[] weight;
        private final Long2DoubleOpenHashMap costs = new Long2DoubleOpenHashMap();

        Optimum(int n, double[] weight) {
            this.n = n;
            this.weight = weight;
            costs.defaultReturnValue(-1);
        }

        double mean() {
            long all = 0;
            for (int s = 1; s < 1 << n; s++) {
                all |= 1L << s;
            }
            return cost(all);
        }

        private double cost(long state) {
            if (Long.bitCount(state) <= 1) {
                return 0;
            }
            double known = costs.get(state);
            if (known >= 0) {
                return known;
            }
            double mass = mass(state);
            List<double[]> splits = new ArrayList<>();
            for (int m = 1; m < 1 << n; m++) {
                long good = state & within(m);
                if (good != 0 && good != state) {
                    splits.add(new double[] {m, mass + huffman(good) + huffman(state & ~good)});
                }
            }
            splits.sort(Comparator.comparingDouble(s -> s[1]));
            double best = Double.POSITIVE_INFINITY;
            for (double[] split : splits) {
                if (split[1] >= best - 1e-12) {
                    break;
                }
                long good = state & within((int) split[0]);
                double c = mass + cost(good);
                if (c + huffman(state & ~good) < best) {
                    best = Math.min(best, c + cost(state & ~good));
                }
            }
            costs.put(state, best);
            return best;
        }

        private long within(int m) {
            long sets = 0;
            for (int s = m; s > 0; s = (s - 1) & m) {
                sets |= 1L << s;
            }
            return sets;
        }

        private double mass(long state) {
            double sum = 0;
            for (long rest = state; rest != 0; rest &= rest - 1) {
                sum += weight[Long.numberOfTrailingZeros(rest)];
            }
            return sum;
        }

        private double huffman(long state) {
            PriorityQueue<Double> queue = new PriorityQueue<>();
            for (long rest = state; rest != 0; rest &= rest - 1) {
                queue.add(weight[Long.numberOfTrailingZeros(rest)]);
            }
            double cost = 0;
            while (queue.size() > 1) {
                double sum = queue.remove() + queue.remove();
                cost += sum;
                queue.add(sum);
            }
            return cost;
        }
    }

    /** @param chance of each contact; 0.5 = all culprit sets alike */
    static String markdown(double chance) {
        StringBuilder out = new StringBuilder(
                "| contacts | culprit sets | plan | optimum | all, then one by one | one at a time |\n"
                        + "| ---: | ---: | ---: | ---: | ---: | ---: |\n");
        for (int n = 2; n <= MOST; n++) {
            double[] prior = MaskPrior.independent(n, chance);
            Plan plan = new Plan(n, prior);
            double ours = 0;
            double all = 0;
            double one = 0;
            for (int culprits = 1; culprits < 1 << n; culprits++) {
                ours += prior[culprits] * plan.trials(culprits);
                all += prior[culprits] * maskAllThenUnmask(n, culprits);
                one += prior[culprits] * oneAtATime(n, culprits);
            }
            String best = n <= OPTIMUM ? String.format(Locale.ROOT, "%.3f", new Optimum(n, prior).mean()) : "";
            out.append(String.format(
                    Locale.ROOT, "| %d | %d | %.3f | %s | %.3f | %.3f |%n", n, (1 << n) - 1, ours, best, all, one));
        }
        return out.toString();
    }

    public static void main(String[] args) {
        for (double chance : new double[] {.5, .3, .15}) {
            System.out.println("Chance of each contact " + chance + ":\n\n" + markdown(chance));
        }
    }
}
