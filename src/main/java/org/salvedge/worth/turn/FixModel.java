package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.CureModel;
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
 * fault, sets of a lot counting as fewer; each fault has {@value #ASSUMED_TRIES} tries beside its own, of what is
 * common practice. Beyond the minute by which nearly all tries on record had ended nothing is expected. Means of minutes and parts are drawn towards common practice with the weight of {@value #WEIGHT} tries.
 */
final class FixModel implements java.io.Serializable {
    private static final int ASSUMED_TRIES = 10;
    private static final double WEIGHT = 5;
    private static final double FAMILY_WEIGHT = 12;
    private static final double LATER_WEIGHT = 8;
    private static final double USUAL_SIGMA = 0.55;
    private static final double LEAST_MINUTES = 0.5;
    private static final double LOOK_MINUTES = 8;
    private static final double LEVEL = 0.95;
    private static final int FEW = 20;
    private static final double NEARLY_ALL = 0.98;

    private final ShrunkYield chances;
    private final Map<List<Object>, Integer> cells = new HashMap<>();
    private final int faults;
    private final double[] saved;
    private final double[] horizon;
    private final double[] later;
    private final double[] laterTries;
    private final double[][] timed;
    private final CommonPractice common;
    private final int[] tries;
    /** First tries by fault and whole minute: passed (1) and not (0). */
    private final double[][][] ended;

    private final Asked<Integer, CureModel> goneOnWith = new Asked<>();
    private final Map<String, Double> paceTries = new HashMap<>();
    private final Asked<List<Object>, List<PossibleTries.Try>> possible = new Asked<>();
    private final double[] look;
    private final LogNormal[] success;
    private final LogNormal[] failure;
    private final double[] parts;
    private final Map<List<Object>, double[]> familyParts = new HashMap<>();
    private final Map<String, Double> pace = new HashMap<>();
    private final Asked<List<Object>, StopRule> rules = new Asked<>();
    private final Asked<List<Object>, double[]> successes = new Asked<>();
    private final Asked<List<Object>, double[]> failures = new Asked<>();

    FixModel(BenchRecord record, CommonPractice common) {
        faults = record.faults().size();
        chances = chances(record, common);
        saved = new double[faults];
        horizon = new double[faults];
        later = new double[faults];
        laterTries = new double[faults];
        timed = new double[2][faults];
        this.common = common;
        look = new double[faults];
        success = new LogNormal[faults];
        failure = new LogNormal[faults];
        parts = new double[faults];
        List<List<BenchRecord.Look>> looksOf = split(record.looks(), BenchRecord.Look::fault);
        List<List<BenchRecord.Try>> triesOf = split(record.tries(), BenchRecord.Try::fault);
        for (int k = 0; k < faults; k++) {
            fault(looksOf.get(k), triesOf.get(k), common, k);
        }
        paces(record);
        tries = new int[faults];
        ended = new double[faults][2][];
        for (int k = 0; k < faults; k++) {
            int most = (int) Math.ceil(horizon[k] * 2) + 1;
            ended[k][0] = new double[most];
            ended[k][1] = new double[most];
        }
        for (BenchRecord.Try t : record.tries()) {
            tries[t.fault()]++;
            if (!t.later() && t.minutes() >= LEAST_MINUTES) {
                double[] by = ended[t.fault()][t.passed() ? 1 : 0];
                by[Math.min(by.length - 1, (int) t.minutes())]++;
            }
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

    /** By fault, each in the order of the record. */
    private <T> List<List<T>> split(List<T> all, ToIntFunction<T> faultOf) {
        List<List<T>> of = new ArrayList<>();
        for (int k = 0; k < faults; k++) {
            of.add(new ArrayList<>());
        }
        for (T one : all) {
            of.get(faultOf.applyAsInt(one)).add(one);
        }
        return of;
    }

    private void fault(List<BenchRecord.Look> lookedAt, List<BenchRecord.Try> tried, CommonPractice common, int k) {
        double looks = WEIGHT;
        double looked = WEIGHT * LOOK_MINUTES;
        for (BenchRecord.Look l : lookedAt) {
            looks++;
            looked += l.minutes();
        }
        look[k] = looked / looks;
        double usual = Math.log(Math.max(LEAST_MINUTES, common.minutes(k)));
        success[k] = times(tried, true, usual);
        failure[k] = times(tried, false, usual + 0.2);
        horizon[k] = horizon(tried, common.minutes(k));
        saved[k] = saved(tried, common.saved(k));
        double n = WEIGHT;
        double spent = WEIGHT * common.parts(k);
        double again = LATER_WEIGHT;
        double savedLater = LATER_WEIGHT * 0.5 * saved[k];
        for (BenchRecord.Try t : tried) {
            n++;
            spent += t.parts();
            again += t.later() ? 1 : 0;
            savedLater += t.later() && t.passed() ? 1 : 0;
        }
        parts[k] = spent / n;
        laterTries[k] = again;
        later[k] = savedLater / again;
    }

    /** Share saved of first tries, those of one lot counting as fewer, beside the assumed ones. */
    private double saved(List<BenchRecord.Try> tried, double assumed) {
        double n = 0;
        double passed = 0;
        java.util.Set<Integer> lots = new java.util.HashSet<>();
        for (BenchRecord.Try t : tried) {
            if (!t.later()) {
                n++;
                passed += t.passed() ? 1 : 0;
                lots.add(t.lot());
            }
        }
        double effective = n == 0 ? 0 : n / (1 + (n / lots.size() - 1) * chances.lotCorrelation());
        double share = n == 0 ? 0 : passed / n;
        return (effective * share + ASSUMED_TRIES * assumed) / (effective + ASSUMED_TRIES);
    }

    /** The minute up to which the record tells how tries go on: nearly all of them had ended by then. */
    private static double horizon(List<BenchRecord.Try> tried, double usual) {
        double[] minutes = tried.stream()
                .mapToDouble(BenchRecord.Try::minutes)
                .filter(m -> m >= LEAST_MINUTES)
                .sorted()
                .toArray();
        return minutes.length < FEW ? Math.max(3 * usual, 10) : minutes[(int) (NEARLY_ALL * (minutes.length - 1))];
    }

    private static LogNormal times(List<BenchRecord.Try> tried, boolean passed, double usual) {
        double n = WEIGHT;
        double sum = WEIGHT * usual;
        for (BenchRecord.Try t : tried) {
            if (t.passed() == passed && t.minutes() >= LEAST_MINUTES) {
                n++;
                sum += Math.log(t.minutes());
            }
        }
        double mu = sum / n;
        double squares = WEIGHT * USUAL_SIGMA * USUAL_SIGMA;
        for (BenchRecord.Try t : tried) {
            if (t.passed() == passed && t.minutes() >= LEAST_MINUTES) {
                squares += Math.pow(Math.log(t.minutes()) - mu, 2);
            }
        }
        return new LogNormal(mu, Math.sqrt(squares / n));
    }

    private void paces(BenchRecord record) {
        Map<String, double[]> sums = new HashMap<>();
        for (BenchRecord.Try t : record.tries()) {
            if (t.minutes() >= LEAST_MINUTES) {
                timed[t.passed() ? 1 : 0][t.fault()]++;
                paceTries.merge(t.family(), 1.0, Double::sum);
                double[] sum = sums.computeIfAbsent(t.family(), f -> new double[2]);
                sum[0]++;
                sum[1] += Math.log(t.minutes()) - (t.passed() ? success : failure)[t.fault()].mu();
            }
        }
        sums.forEach((family, sum) -> pace.put(family, sum[1] / (sum[0] + FAMILY_WEIGHT)));
    }

    /** Chance that a try saves the set: the fault's, by as much as the family is better at it or worse. */
    double chance(String family, int fault, boolean again) {
        Integer cell = cells.get(List.of(family, fault));
        double first = saved[fault];
        if (cell != null) {
            double odds = first / (1 - first) * odds(chances.mean(cell)) / odds(chances.parentMean(1, fault));
            first = odds / (1 + odds);
        }
        return again ? Math.min(first, later[fault] * first / saved[fault]) : first;
    }

    private static double odds(double p) {
        return p / (1 - p);
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
        return rules.of(
                List.of(family, fault, again),
                k -> TrySpan.rule(
                        chance(family, fault, again),
                        success[fault],
                        failure[fault],
                        pace.getOrDefault(family, 0.0),
                        horizon[fault]));
    }

    /** Chance of success by each of the minutes of {@link TrySpan#MINUTES}. */
    double[] success(String family, int fault, boolean again) {
        return successes.of(
                List.of(family, fault, again),
                key -> TrySpan.cumulative(
                        chance(family, fault, again), success[fault], pace.getOrDefault(family, 0.0), horizon[fault]));
    }

    /** Chance that a hopeless try has ended by each of them. */
    double[] failure(String family, int fault, boolean again) {
        return failures.of(
                List.of(family, fault, again),
                key -> TrySpan.cumulative(
                        1 - chance(family, fault, again),
                        failure[fault],
                        pace.getOrDefault(family, 0.0),
                        horizon[fault]));
    }

    /** Tries on record at a fault. */
    int tries(int fault) {
        return tries[fault];
    }

    /**
     * What the record leaves possible: the chance (on the logit scale), the median minutes of success and of failure and the family's
     * pace, each drawn about its estimate with its standard error.
     */
    List<PossibleTries.Try> possible(String family, int fault, boolean again, PossibleTries scores) {
        return possible.of(List.of(family, fault, again), key -> {
            double p = chance(family, fault, again);
            Integer cell = cells.get(List.of(family, fault));
            int c = cell == null ? fault : cell;
            double mean = chances.mean(c);
            double error = chances.sd(c) / (mean * (1 - mean));
            if (again) {
                error = Math.hypot(error, 1 / Math.sqrt(laterTries[fault] * p * (1 - p)));
            }
            CureModel on = goneOnWith(fault);
            double share = shifted(on.share(), odds(p) / odds(saved[fault]));
            double paceError = success[fault].sigma() / Math.sqrt(paceTries.getOrDefault(family, 0.0) + FAMILY_WEIGHT);
            List<PossibleTries.Try> draws = new ArrayList<>();
            for (int d = 0; d < PossibleTries.DRAWS; d++) {
                boolean nothing = PossibleTries.tellsNothing(d);
                double off = Math.exp(error * scores.score(PossibleTries.CHANCE, d));
                double chance = shifted(nothing ? Math.max(share, p) : p, off);
                double own = pace.getOrDefault(family, 0.0) + paceError * scores.score(PossibleTries.PACE, d);
                double s = error(success[fault], 1, fault) * scores.score(PossibleTries.SUCCESS, d);
                double f = error(failure[fault], 0, fault) * scores.score(PossibleTries.FAILURE, d);
                LogNormal minutes = nothing ? on.minutes() : success[fault];
                draws.add(new PossibleTries.Try(
                        TrySpan.cumulative(chance, minutes, own + s, horizon[fault] / Math.exp(s)),
                        nothing
                                ? new double[TrySpan.minutes().length]
                                : TrySpan.cumulative(
                                        1 - chance, failure[fault], own + f, horizon[fault] / Math.exp(f))));
            }
            return draws;
        });
    }

    private double error(LogNormal minutes, int passed, int fault) {
        return minutes.sigma() / Math.sqrt(timed[passed][fault] + WEIGHT);
    }

    private static double shifted(double p, double by) {
        double odds = odds(Math.min(p, 1 - 1e-9)) * by;
        return odds / (1 + odds);
    }

    /** The tries at a fault if giving up tells nothing of the minutes not tried; by whole minutes. */
    private CureModel goneOnWith(int fault) {
        return goneOnWith.of(fault, k -> {
            double[] minute = new double[ended[k][1].length];
            for (int m = 0; m < minute.length; m++) {
                minute[m] = m + 0.5;
            }
            LogNormal usual = new LogNormal(Math.log(Math.max(LEAST_MINUTES, common.minutes(k))), USUAL_SIGMA);
            return CureModel.fit(
                    minute,
                    ended[k][1],
                    ended[k][0],
                    new CureModel.Prior(common.saved(k), ASSUMED_TRIES, usual, WEIGHT));
        });
    }
}
