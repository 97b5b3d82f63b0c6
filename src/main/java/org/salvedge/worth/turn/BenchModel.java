package org.salvedge.worth.turn;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.stats.StopRule;
import org.salvedge.worth.Route;

/**
 * What a turn at the bench is expected to bring, from the shop's own record.
 *
 * <p>A set is diagnosed; then the fault found is fixed up to its stop minute, where that brings more than stripping at once, or
 * the set is stripped. Its place is the rate at which such a turn pays: the price of a minute at which the best way to go on is
 * worth nothing (the index of a job with stages; Gittins 1979, JRSS B 41, 148-177). Where there is more work than time, stops
 * count a minute at labour plus what the work that is left undone would have paid for it (the shadow price).
 */
public final class BenchModel implements java.io.Serializable {
    private static final int STEPS = 40;
    private static final double MOST_A_MINUTE = 1e4;
    private static final double MINUTES_AN_HOUR = 60;

    private final BenchKnowledge known;
    private final double labour;

    /** @param labour price of a minute */
    BenchModel(BenchKnowledge known, double labour) {
        this.known = known;
        this.labour = labour;
    }

    /** What brings most of a set that is not fixed, with this fault found or likely. */
    public Route otherwise(OnBench set, String fault) {
        return known.otherwise(set, fault);
    }

    /** Tries at a fault on record. */
    public int tries(String fault) {
        return known.tries(fault);
    }

    /**
     * @param today epoch day of the estimate
     * @param labourRate per hour
     */
    public static BenchModel fit(History history, int today, BigDecimal labourRate) {
        double hourly = labourRate.doubleValue();
        return new BenchModel(new LearntBench(new BenchRecord(history), today, hourly), hourly / MINUTES_AN_HOUR);
    }

    /**
     * A set on the bench.
     *
     * @param inches 0 = not known
     * @param found the fault that was found; null = not diagnosed yet
     * @param again a fix of that fault has failed before
     * @param spent minutes so far
     */
    public record OnBench(
            String family,
            double inches,
            String claim,
            String supplier,
            @Nullable String found,
            boolean again,
            double spent) {

        // By hand, as below: a record's own are put together when first used, which every start would pay for.
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof OnBench b
                    && family.equals(b.family)
                    && Double.compare(inches, b.inches) == 0
                    && claim.equals(b.claim)
                    && supplier.equals(b.supplier)
                    && Objects.equals(found, b.found)
                    && again == b.again
                    && Double.compare(spent, b.spent) == 0;
        }

        @Override
        public int hashCode() {
            int hash = 31 * (31 * family.hashCode() + claim.hashCode()) + supplier.hashCode();
            hash = 31 * (31 * hash + Objects.hashCode(found)) + Boolean.hashCode(again);
            return 31 * (31 * hash + Double.hashCode(inches)) + Double.hashCode(spent);
        }
    }

    /** One fault that a set may have: its chance, and what a try at it is like. */
    private record Case(int fault, double chance, double look, double saving, double parts, StopRule rule) {
        /** Where to stop, and what going on is worth at this price of a minute; less than 0: strip. */
        StopRule.Stop stop(double minute) {
            return rule.best(Math.max(0, saving), minute);
        }

        double worth(double minute) {
            return stop(minute).gain() - parts;
        }
    }

    private List<Case> cases(OnBench set) {
        double saving = known.saving(set);
        List<Case> cases = new ArrayList<>();
        int found = set.found() == null ? -1 : known.faults().indexOf(set.found());
        if (found >= 0 && !known.faults().get(found).equals(Fault.UNKNOWN.code())) {
            cases.add(aCase(set, found, 1, 0, saving));
            return cases;
        }
        double[] share = known.odds(set);
        for (int k = 0; k < share.length; k++) {
            cases.add(aCase(set, k, share[k], known.look(k), saving));
        }
        cases.sort(java.util.Comparator.comparingDouble(Case::chance).reversed().thenComparingInt(Case::fault));
        return cases;
    }

    private Case aCase(OnBench set, int fault, double chance, double look, double saving) {
        return new Case(fault, chance, look, saving, known.parts(set, fault), known.rule(set, fault));
    }

    /** What a set brings stripped, net. */
    public double stripped(OnBench set) {
        return known.stripped(set);
    }

    /** The gain of a turn where the part for the likely fault is at hand and costs nothing. */
    public double gainWithPart(OnBench set, double shadow) {
        List<Case> cases = cases(set);
        Case likely = cases.get(0);
        cases.set(0, new Case(likely.fault(), likely.chance(), likely.look(), likely.saving(), 0, likely.rule()));
        return prospect(set, cases, shadow).gain();
    }

    /**
     * When to give up a set if this fault is found, the minutes before it is found included; 0 = strip. The answer is that of
     * {@link #of} under {@link Prospect#stops}; the band is what the record leaves open.
     *
     * @param shadow as in {@link #of}
     */
    public Stop stop(OnBench set, String fault, double shadow) {
        int k = known.faults().indexOf(fault);
        if (k < 0) {
            return new Stop(0, 0, 0);
        }
        double look = fault.equals(set.found()) ? 0 : known.look(k);
        Case c = aCase(set, k, 1, look, known.saving(set));
        double minute = labour + shadow;
        List<PossibleTries.Try> possible = known.possible(set, k);
        int[] drawn = new int[possible.size()];
        for (int d = 0; d < drawn.length; d++) {
            StopRule.Stop at = rule(possible.get(d)).best(Math.max(0, known.saving(set, d)), minute);
            drawn[d] = at.gain() > c.parts() ? (int) Math.round(set.spent() + look + at.minute()) : 0;
        }
        return Stop.of(stopOf(set, c, minute), drawn);
    }

    private static StopRule rule(PossibleTries.Try t) {
        return StopRule.of(TrySpan.minutes(), t.success(), t.failure());
    }

    private static int stopOf(OnBench set, Case c, double minute) {
        return c.worth(minute) > 0
                ? (int) Math.round(set.spent() + c.look() + c.stop(minute).minute())
                : 0;
    }

    /** What a fix of this fault brings over stripping, less parts and labour; 0 = it is not worth beginning. */
    public double gainOfFixing(OnBench set, String fault, double shadow) {
        int k = known.faults().indexOf(fault);
        if (k < 0) {
            return 0;
        }
        Case c = aCase(set, k, 1, 0, known.saving(set));
        StopRule.Stop stop = c.stop(labour + shadow);
        return c.worth(labour + shadow) > 0 ? stop.chance() * c.saving() - c.parts() - labour * stop.minutes() : 0;
    }

    /** When to give up a set as long as its fault is not known, with its band. */
    public Stop stop(OnBench set, double shadow) {
        List<Case> cases = cases(set);
        Prospect p = prospect(set, cases, shadow);
        if (cases.size() == 1) {
            return stop(set, p.likely(), shadow);
        }
        double looks = 0;
        double parts = 0;
        List<List<PossibleTries.Try>> possible = new ArrayList<>();
        for (Case c : cases) {
            looks += c.chance() * c.look();
            parts += c.chance() * c.parts();
            possible.add(known.possible(set, c.fault()));
        }
        int[] drawn = new int[possible.get(0).size()];
        for (int d = 0; d < drawn.length; d++) {
            double[] success = new double[TrySpan.minutes().length];
            double[] over = new double[success.length];
            for (int i = 0; i < cases.size(); i++) {
                TrySpan.add(
                        success, cases.get(i).chance(), possible.get(i).get(d).success());
                TrySpan.add(over, cases.get(i).chance(), possible.get(i).get(d).failure());
            }
            drawn[d] = stopAt(set, success, over, known.saving(set, d), looks, parts, labour + shadow, p.gain() > 0);
        }
        return Stop.of(p.stopAt(), drawn);
    }

    /** @param shadow price of a minute of bench time beyond labour, in units of the currency; 0 = there is time enough */
    public Prospect of(OnBench set, double shadow) {
        return prospect(set, cases(set), shadow);
    }

    private Prospect prospect(OnBench set, List<Case> cases, double shadow) {
        double minute = labour + shadow;
        double gain = 0;
        double minutes = 0;
        double saved = 0;
        Map<String, Integer> stops = new LinkedHashMap<>();
        for (Case c : cases) {
            StopRule.Stop stop = c.stop(minute);
            boolean tries = c.worth(minute) > 0;
            double spent = c.look() + (tries ? stop.minutes() : 0);
            minutes += c.chance() * spent;
            gain += c.chance() * ((tries ? stop.chance() * c.saving() - c.parts() : 0) - labour * spent);
            saved += c.chance() * (tries ? stop.chance() : 0);
            stops.put(known.faults().get(c.fault()), stopOf(set, c, minute));
        }
        Case likely = cases.get(0);
        return new Prospect(
                known.faults().get(likely.fault()),
                likely.chance(),
                saved,
                gain,
                minutes,
                rate(cases),
                stopAt(set, cases, minute, gain > 0),
                stops);
    }

    /** The price of a minute beyond labour at which the turn brings nothing. */
    private double rate(List<Case> cases) {
        double low = -labour;
        double high = 1;
        while (value(cases, high) > 0 && high < MOST_A_MINUTE) {
            high *= 2;
        }
        for (int i = 0; i < STEPS; i++) {
            double middle = (low + high) / 2;
            if (value(cases, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private double value(List<Case> cases, double beyond) {
        double minute = labour + beyond;
        double value = 0;
        for (Case c : cases) {
            value += c.chance() * (Math.max(0, c.worth(minute)) - minute * c.look());
        }
        return value;
    }

    /**
     * While the fault is not known, all of them are tried at: the stop of their mixture; of a set that is worth a turn only for
     * what may be found, twice the time that finding usually takes.
     */
    private int stopAt(OnBench set, List<Case> cases, double minute, boolean worthATurn) {
        double[] success = new double[TrySpan.minutes().length];
        double[] over = new double[success.length];
        double looks = 0;
        double parts = 0;
        for (Case c : cases) {
            TrySpan.add(success, c.chance(), known.success(set, c.fault()));
            TrySpan.add(over, c.chance(), known.failure(set, c.fault()));
            looks += c.chance() * c.look();
            parts += c.chance() * c.parts();
        }
        return stopAt(set, success, over, cases.get(0).saving(), looks, parts, minute, worthATurn);
    }

    private static int stopAt(
            OnBench set,
            double[] success,
            double[] over,
            double saving,
            double looks,
            double parts,
            double minute,
            boolean worthATurn) {
        StopRule.Stop stop = StopRule.of(TrySpan.minutes(), success, over).best(Math.max(0, saving), minute);
        if (stop.gain() > parts) {
            return (int) Math.round(set.spent() + looks + stop.minute());
        }
        return worthATurn ? (int) Math.ceil(set.spent() + 2 * looks) : 0;
    }
}
