package org.salvedge.cli;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchQueue.Place;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.UnitId;
import org.salvedge.worth.turn.OpenBench;
import org.salvedge.worth.turn.Prospect;
import org.salvedge.worth.turn.Stop;

/** What is ahead of a set in hand, and when it has had enough time. */
final class BenchStops {
    private final BenchPlan plan;
    private final Map<UnitId, OpenBench> sets = new HashMap<>();
    private final Map<UnitId, Stop> stop = new HashMap<>();
    private final Set<String> done = new HashSet<>();

    BenchStops(BenchPlan plan) {
        this.plan = plan;
    }

    private @Nullable OpenBench set(UnitId unit) {
        OpenBench known = sets.get(unit);
        return known == null ? plan.open(unit.value()) : known;
    }

    /** A set is taken in hand: what is likely, what to do, when to stop; null for one that is not on the bench. */
    @Nullable
    String take(UnitId unit) {
        OpenBench set = set(unit);
        if (set == null) {
            return null;
        }
        Prospect p = plan.prospect(set.what());
        Stop at = plan.stop(set);
        stop.put(unit, at);
        Fix fix = plan.usual().of(set.what().family(), new Fault(p.likely()));
        return (p.chance() == 1 ? "" : String.format(Locale.ROOT, "%.2f ", p.chance()))
                + p.likely()
                + (fix == null ? "" : ", " + fix.code())
                + String.format(Locale.ROOT, "; saved %.2f, gain %.0f", p.saved(), p.gain())
                + (at.minute() == 0
                        ? "; better: " + plan.otherwise(set).code() + " at once"
                        : "; stop at " + at.words() + " min");
    }

    /** The fault is found after so many minutes in hand: the stop for it. */
    String found(UnitId unit, Fault fault, long minutes) {
        OpenBench set = set(unit);
        if (set == null) {
            return "";
        }
        Stop at = plan.stop(set, fault, (double) minutes);
        stop.put(unit, at);
        return at.minute() == 0
                ? "; " + plan.otherwise(set, fault).code() + ": a fix is not expected to pay"
                : "; stop at " + at.words() + " min";
    }

    private int spent(UnitId unit) {
        OpenBench set = set(unit);
        return set == null ? 0 : (int) Math.round(set.what().spent());
    }

    /** For the prompt: that the stop minute has passed. */
    String past(UnitId unit, long minutes) {
        Stop at = stop.get(unit);
        return at != null && at.minute() > 0 && spent(unit) + minutes > at.minute()
                ? ", past its stop at " + at.words()
                : "";
    }

    /** A turn is on record; what to say of its minutes, null = nothing. */
    @Nullable
    String recorded(Attempt a) {
        OpenBench set = set(a.unit());
        Stop at = stop.remove(a.unit());
        done.add(a.unit().value());
        if (set == null) {
            return null;
        }
        double minutes =
                (a.diagnosisMinutes() == null ? 0 : a.diagnosisMinutes().toDouble())
                        + (a.fixMinutes() == null ? 0 : a.fixMinutes().toDouble());
        boolean failed = Boolean.FALSE.equals(a.passed());
        sets.put(a.unit(), set.after(a.fault().code(), failed, minutes));
        return at != null
                        && at.minute() > 0
                        && set.what().spent() + minutes > at.minute()
                        && !Boolean.TRUE.equals(a.passed())
                ? a.unit() + ": past its stop minute, " + at.words() + ": going on is expected to lose money"
                : null;
    }

    /** The first of the queue that was not in hand in this talk. */
    String next(Set<UnitId> inHand) {
        for (Place p : plan.order(0)) {
            String unit = p.candidate().unit();
            if (!done.contains(unit) && !inHand.contains(new UnitId(unit))) {
                Prospect q = p.candidate().prospect();
                return String.format(
                        Locale.ROOT,
                        "next: %s, %s, likely %s, gain %.0f in %.0f min",
                        unit,
                        p.candidate().family(),
                        q.likely(),
                        q.gain(),
                        p.minutes());
            }
        }
        return "No set on the bench is expected to bring more than stripping it.";
    }
}
