package org.salvedge.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.LogNormal;
import org.salvedge.stats.ShrunkYield;
import org.salvedge.stats.StopRule;

/**
 * How a fault of a family goes at the bench: minutes to find it, chance that a fix saves the set, minutes to success and to the
 * end of a hopeless try, parts.
 *
 * <p>Success and failure compete: with chance p a try ends in success after log-normal minutes, else in failure after log-normal
 * minutes of its own (a mixture of competing risks; Larson and Dinse 1985, Applied Statistics 34, 201-211). A technician's
 * giving up counts as the end of a hopeless try. The chance is that of {@link ShrunkYield}: family x fault drawn towards the
 * fault, sets of a lot counting as fewer; each fault has a record of {@value #ASSUMED_TRIES} tries beside its own, of what is
 * common practice. Means of minutes and parts are drawn towards common practice with the weight of {@value #WEIGHT} tries.
 */
final class FixModel {
    private static final int ASSUMED_TRIES = 10;
    private static final double WEIGHT = 5;
    private static final double FAMILY_WEIGHT = 12;
    private static final double LATER_WEIGHT = 8;
    private static final double USUAL_SIGMA = 0.55;
    private static final double LEAST_MINUTES = 0.5;
    private static final double LOOK_MINUTES = 8;
    private static final double LEVEL = 0.95;

    private final ShrunkYield chances;
    private final Map<List<Object>, Integer> cells = new HashMap<>();
    private final int faults;
    private final double[] later;
    private final double[] look;
    private final LogNormal[] success;
    private final LogNormal[] failure;
    private final double[] parts;
    private final Map<List<Object>, double[]> familyParts = new HashMap<>();
    private final Map<String, Double> pace = new HashMap<>();
    private final Map<List<Object>, StopRule> rules = new HashMap<>();

    FixModel(BenchRecord record, CommonPractice common) {
        faults = record.faults().size();
        chances = chances(record, common);
        later = new double[faults];
        look = new double[faults];
        success = new LogNormal[faults];
        failure = new LogNormal[faults];
        parts = new double[faults];
        for (int k = 0; k < faults; k++) {
            fault(record, common, k);
        }
        paces(record);
        for (BenchRecord.Try t : record.tries()) {
            double[] sum = familyParts.computeIfAbsent(List.of(t.family(), t.fault()), c -> new double[2]);
            sum[0]++;
            sum[1] += t.parts();
        }
    }

    private ShrunkYield chances(BenchRecord record, CommonPractice common) {
        for (int k = 0; k < faults; k++) {
            cells.put(List.of("", k), k);
        }
        List<BenchRecord.Try> first =
                record.tries().stream().filter(t -> !t.later()).toList();
        int rows = first.size() + faults;
        int[] cell = new int[rows];
        int[] lot = new int[rows];
        int[] saved = new int[rows];
        int[] decided = new int[rows];
        int lots = 0;
        for (int i = 0; i < first.size(); i++) {
            BenchRecord.Try t = first.get(i);
            cell[i] = cells.computeIfAbsent(List.of(t.family(), t.fault()), c -> cells.size());
            lot[i] = t.lot();
            saved[i] = t.passed() ? 1 : 0;
            decided[i] = 1;
            lots = Math.max(lots, t.lot() + 1);
        }
        for (int k = 0; k < faults; k++) {
            int row = first.size() + k;
            cell[row] = k;
            lot[row] = lots + k;
            saved[row] = (int) Math.round(ASSUMED_TRIES * common.saved(k));
            decided[row] = ASSUMED_TRIES;
        }
        int[] parent = new int[cells.size()];
        cells.forEach((key, c) -> parent[c] = (Integer) key.get(1));
        return ShrunkYield.fit(cells.size(), cell, lot, saved, decided, new int[][] {parent}, LEVEL);
    }

    private void fault(BenchRecord record, CommonPractice common, int k) {
        double looks = WEIGHT;
        double looked = WEIGHT * LOOK_MINUTES;
        for (BenchRecord.Look l : record.looks()) {
            if (l.fault() == k) {
                looks++;
                looked += l.minutes();
            }
        }
        look[k] = looked / looks;
        double usual = Math.log(Math.max(LEAST_MINUTES, common.minutes(k)));
        success[k] = times(record, k, true, usual);
        failure[k] = times(record, k, false, usual + 0.2);
        double n = WEIGHT;
        double spent = WEIGHT * common.parts(k);
        double again = LATER_WEIGHT;
        double saved = LATER_WEIGHT * 0.5 * chance("", k, false);
        for (BenchRecord.Try t : record.tries()) {
            if (t.fault() == k) {
                n++;
                spent += t.parts();
                again += t.later() ? 1 : 0;
                saved += t.later() && t.passed() ? 1 : 0;
            }
        }
        parts[k] = spent / n;
        later[k] = saved / again;
    }

    private static LogNormal times(BenchRecord record, int k, boolean passed, double usual) {
        double n = WEIGHT;
        double sum = WEIGHT * usual;
        for (BenchRecord.Try t : record.tries()) {
            if (t.fault() == k && t.passed() == passed && t.minutes() >= LEAST_MINUTES) {
                n++;
                sum += Math.log(t.minutes());
            }
        }
        double mu = sum / n;
        double squares = WEIGHT * USUAL_SIGMA * USUAL_SIGMA;
        for (BenchRecord.Try t : record.tries()) {
            if (t.fault() == k && t.passed() == passed && t.minutes() >= LEAST_MINUTES) {
                squares += Math.pow(Math.log(t.minutes()) - mu, 2);
            }
        }
        return new LogNormal(mu, Math.sqrt(squares / n));
    }

    private void paces(BenchRecord record) {
        Map<String, double[]> sums = new HashMap<>();
        for (BenchRecord.Try t : record.tries()) {
            if (t.minutes() >= LEAST_MINUTES) {
                double[] sum = sums.computeIfAbsent(t.family(), f -> new double[2]);
                sum[0]++;
                sum[1] += Math.log(t.minutes()) - (t.passed() ? success : failure)[t.fault()].mu();
            }
        }
        sums.forEach((family, sum) -> pace.put(family, sum[1] / (sum[0] + FAMILY_WEIGHT)));
    }

    /** Chance that a try saves the set. */
    double chance(String family, int fault, boolean again) {
        Integer cell = cells.get(List.of(family, fault));
        double first = cell == null ? chances.parentMean(1, fault) : chances.mean(cell);
        if (!again) {
            return first;
        }
        return Math.min(first, later[fault] * first / Math.max(1e-9, chances.parentMean(1, fault)));
    }

    /** Mean minutes until the fault is found. */
    double look(int fault) {
        return look[fault];
    }

    /** Parts expected for a try, in units of the currency. */
    double parts(String family, int fault) {
        double @Nullable [] own = familyParts.get(List.of(family, fault));
        return own == null ? parts[fault] : (own[1] + FAMILY_WEIGHT * parts[fault]) / (own[0] + FAMILY_WEIGHT);
    }

    /** Where to stop a try, minutes counted from its beginning. */
    StopRule rule(String family, int fault, boolean again) {
        return rules.computeIfAbsent(
                List.of(family, fault, again),
                k -> TrySpan.rule(
                        chance(family, fault, again),
                        success[fault],
                        failure[fault],
                        pace.getOrDefault(family, 0.0)));
    }

    /** Chance of success by each of the minutes of {@link TrySpan#MINUTES}. */
    double[] success(String family, int fault, boolean again) {
        return TrySpan.cumulative(chance(family, fault, again), success[fault], pace.getOrDefault(family, 0.0));
    }

    /** Chance that a hopeless try has ended by each of them. */
    double[] failure(String family, int fault, boolean again) {
        return TrySpan.cumulative(1 - chance(family, fault, again), failure[fault], pace.getOrDefault(family, 0.0));
    }
}
