package org.salvedge.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.UnitId;

/**
 * A watch for each set in hand. One runs at a time: taking another set in hand stops it, taking the set again lets it run on.
 * From the fault found on, time counts to the fix.
 */
public final class BenchClock {
    private static final long MILLIS_A_MINUTE = 60_000;

    private final Map<UnitId, Watch> watches = new LinkedHashMap<>();
    private @Nullable UnitId running;

    /** Time on one set. */
    private static final class Watch {
        final Instant taken;
        Duration diagnosis = Duration.ZERO;
        Duration fix = Duration.ZERO;

        @Nullable
        Instant since;

        @Nullable
        Fault fault;

        Watch(Instant taken) {
            this.taken = taken;
        }

        void stop(Instant now) {
            if (since == null) {
                return;
            }
            Duration ran = Duration.between(since, now);
            if (ran.isNegative()) {
                ran = Duration.ZERO;
            }
            if (fault == null) {
                diagnosis = diagnosis.plus(ran);
            } else {
                fix = fix.plus(ran);
            }
            since = null;
        }
    }

    /** The set is taken in hand. */
    public void take(UnitId unit, Instant now) {
        pause(now);
        watches.computeIfAbsent(unit, u -> new Watch(now)).since = now;
        running = unit;
    }

    /** No watch runs. */
    public void pause(Instant now) {
        Watch watch = running == null ? null : watches.get(running);
        if (watch != null) {
            watch.stop(now);
        }
        running = null;
    }

    /** The fault is found; from now on the time is that of the fix. */
    public void found(UnitId unit, Fault fault, Instant now) {
        Watch watch = of(unit);
        boolean runs = watch.since != null;
        watch.stop(now);
        watch.fault = fault;
        watch.since = runs ? now : null;
    }

    /** The turn is recorded: its watch is put away. */
    public void done(UnitId unit) {
        watches.remove(unit);
        if (unit.equals(running)) {
            running = null;
        }
    }

    /** Sets with a watch, in the order they were taken in hand. */
    public Set<UnitId> inHand() {
        return watches.keySet();
    }

    public @Nullable Fault fault(UnitId unit) {
        return of(unit).fault;
    }

    /** When the set was taken in hand. */
    public Instant taken(UnitId unit) {
        return of(unit).taken;
    }

    /** Whole minutes until the fault was found, half up. */
    public long diagnosisMinutes(UnitId unit, Instant now) {
        Watch w = of(unit);
        return minutes(w.fault == null ? running(w, now).plus(w.diagnosis) : w.diagnosis);
    }

    /** Whole minutes since, half up. */
    public long fixMinutes(UnitId unit, Instant now) {
        Watch w = of(unit);
        return minutes(w.fault == null ? Duration.ZERO : running(w, now).plus(w.fix));
    }

    /** Whole minutes in all, half up. */
    public long minutes(UnitId unit, Instant now) {
        Watch w = of(unit);
        return minutes(w.diagnosis.plus(w.fix).plus(running(w, now)));
    }

    /** Whole minutes as a quantity; null where the watch shows none, which then is not known. */
    public static @Nullable Quantity known(long minutes) {
        return minutes == 0 ? null : Quantity.of(minutes);
    }

    private static Duration running(Watch w, Instant now) {
        Duration ran = w.since == null ? Duration.ZERO : Duration.between(w.since, now);
        return ran.isNegative() ? Duration.ZERO : ran;
    }

    private static long minutes(Duration d) {
        return (d.toMillis() + MILLIS_A_MINUTE / 2) / MILLIS_A_MINUTE;
    }

    private Watch of(UnitId unit) {
        Watch watch = watches.get(unit);
        if (watch == null) {
            throw new IllegalArgumentException(unit + " is not in hand");
        }
        return watch;
    }
}
