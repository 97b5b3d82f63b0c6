package org.salvedge.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Currency;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Residual;
import org.salvedge.shop.Side;

/**
 * Two years of an invented shop, day by day: lots come in, a bench of limited hours takes sets in turn, what passes is offered
 * and sold after a while, the rest is stripped, sold as it is or recycled. The same seed gives the same years everywhere.
 */
public final class DemoShop {
    /** First day. */
    public static final LocalDate FIRST_DAY = LocalDate.of(2024, 3, 4);
    /** Last day that anything happens on. */
    public static final LocalDate LAST_DAY = LocalDate.of(2026, 2, 28);

    static final Currency EUR = Currency.getInstance("EUR");

    private static final int LOTS = 56;
    private static final double BENCH_MINUTES = 350;
    private static final double PRICE_TREND_A_MONTH = -.006;
    private static final double DAYS_A_MONTH = 30.44;
    /** From then on some sets with column faults have their cable reseated first, the film rebonded only if that fails. */
    private static final LocalDate CABLE_FIRST_FROM = LocalDate.of(2025, 6, 1);

    private static final double CABLE_FIRST = .4;
    private static final List<String> PEOPLE = List.of("Ines", "Joost", "Milda");

    private final Dice dice;
    /** Lots have dice of their own: what happens at the bench changes nothing of what is bought. */
    private final DemoLots lots;

    private final List<Fact> facts = new ArrayList<>();
    private final Deque<DemoSet> bench = new ArrayDeque<>();
    /** What is going to happen on later days, in order. */
    private final Map<LocalDate, List<Runnable>> agenda = new TreeMap<>();

    private LocalDate today = FIRST_DAY;
    private int attempts;
    /** Panel and contacts to times used and good. */
    private final Map<String, int[]> masks = new TreeMap<>();

    private DemoShop(long seed) {
        dice = new Dice(seed + 1);
        lots = new DemoLots(new Dice(seed), facts);
    }

    /** The whole record, sets before what happened to them. Landed costs are left to be shared out. */
    public static List<Fact> history(long seed) {
        DemoShop shop = new DemoShop(seed);
        shop.run();
        shop.recipes();
        return List.copyOf(shop.facts);
    }

    private void run() {
        int bought = 0;
        LocalDate nextLot = FIRST_DAY;
        while (!today.isAfter(LAST_DAY)) {
            if (bought < LOTS && !today.isBefore(nextLot)) {
                List<DemoSet> sets = lots.buy(++bought, today);
                LocalDate ready = today.plusDays(6);
                at(ready, () -> sets.stream().filter(s -> s.arrived).forEach(bench::addLast));
                nextLot = lots.next(today);
            }
            List<Runnable> due = agenda.remove(today);
            if (due != null) {
                due.forEach(Runnable::run);
            }
            if (today.getDayOfWeek() != DayOfWeek.SATURDAY && today.getDayOfWeek() != DayOfWeek.SUNDAY) {
                workday();
            }
            today = today.plusDays(1);
        }
    }

    private void recipes() {
        masks.forEach((key, tally) -> {
            int bar = key.indexOf('|');
            facts.add(new Recipe(
                    key.substring(0, bar),
                    Side.LEFT,
                    key.substring(bar + 1),
                    null,
                    Residual.FAINT,
                    Residual.NONE,
                    tally[0],
                    tally[1],
                    null));
        });
    }

    /** Puts something on the agenda; what falls after the last day never happens. */
    private void at(LocalDate day, Runnable what) {
        if (!day.isAfter(LAST_DAY)) {
            agenda.computeIfAbsent(day, d -> new ArrayList<>()).add(what);
        }
    }

    private void workday() {
        double left = BENCH_MINUTES * dice.uniform(.85, 1.1);
        int minute = 8 * 60 + dice.whole(0, 20);
        while (left > 0 && !bench.isEmpty()) {
            double used = turn(bench.removeFirst(), today.atTime(minute / 60, minute % 60));
            left -= used;
            minute = Math.min(minute + Math.max(3, (int) used / 2), 18 * 60); // two people work side by side
        }
    }

    /** One turn at the bench; returns the minutes it took. */
    private double turn(DemoSet set, LocalDateTime start) {
        double diagnosis = minutes(dice.logNormal(set.fault.equals(Fault.PANEL_BROKEN) ? 5 : 9, .45));
        List<DemoBench.Way> ways = DemoBench.WAYS.getOrDefault(set.fault, List.of());
        if (set.tries >= ways.size()) {
            attempt(set, start, Fix.NONE, diagnosis, null, 0, null);
            letGo(set);
            return diagnosis;
        }
        DemoBench.Way way = way(set, ways);
        if (way.fix().equals(Fix.NONE)) {
            boolean works = dice.chance(way.chance());
            attempt(set, start, Fix.NONE, diagnosis + 8, null, 0, works);
            afterRetest(set, works, ways.size());
            return diagnosis + 8;
        }
        double months = FIRST_DAY.until(today).toTotalMonths();
        double skill = way.fix().equals(Fix.CONTACT_MASK) ? .022 * months : .004 * months;
        boolean works =
                dice.chance(Dice.logistic(Dice.logit(way.chance()) + set.family.craft() + set.fate + skill - .22));
        double median = way.minutes()
                * (set.family.inches() >= 65 ? 1.25 : 1)
                * StrictMath.pow(1 + months, way.fix().equals(Fix.CONTACT_MASK) ? -.08 : -.02);
        double fix = minutes(dice.logNormal(works ? median : 1.25 * median, .5));
        double parts = way.parts() == 0 || dice.chance(.1) ? 0 : dice.logNormal(way.parts(), .35);
        if (way.fix().equals(Fix.CONTACT_MASK)) {
            set.masked |= works;
            int[] tally = masks.computeIfAbsent(
                    set.family.panel(set.variant) + (dice.chance(.7) ? "|3 4 5 9 10" : "|2 3 4 5 8 9 10"),
                    k -> new int[2]);
            tally[0]++;
            tally[1] += works ? 1 : 0;
        }
        attempt(set, start, way.fix(), diagnosis, fix, parts, works);
        afterRetest(set, works, ways.size());
        return diagnosis + fix;
    }

    private DemoBench.Way way(DemoSet set, List<DemoBench.Way> ways) {
        if (set.tries == 0) {
            set.cableFirst = set.fault.equals(Fault.COLUMN_DRIVE)
                    && !today.isBefore(CABLE_FIRST_FROM)
                    && dice.chance(CABLE_FIRST);
        }
        int next = set.tries++;
        return ways.get(set.cableFirst ? ways.size() - 1 - next : next);
    }

    private void afterRetest(DemoSet set, boolean works, int ways) {
        if (works) {
            offer(set);
        } else if (set.tries < ways && dice.chance(.55)) {
            at(today.plusDays(dice.whole(1, 8)), () -> bench.addFirst(set));
        } else {
            letGo(set);
        }
    }

    private void attempt(
            DemoSet set,
            LocalDateTime start,
            Fix fix,
            double diagnosis,
            @Nullable Double fixMinutes,
            double parts,
            @Nullable Boolean passed) {
        boolean works = Boolean.TRUE.equals(passed);
        boolean lines = fix.equals(Fix.CONTACT_MASK) && works;
        Residual close = lines ? dice.chance(.6) ? Residual.FAINT : Residual.NONE : null;
        set.grade = !works ? null : lines ? dice.chance(.8) ? Grade.B : Grade.C : dice.chance(.55) ? Grade.A : Grade.B;
        facts.add(new Attempt(
                ++attempts,
                set.unit,
                start,
                PEOPLE.get(dice.whole(0, PEOPLE.size() - 1)),
                set.fault,
                fix,
                tenths(diagnosis),
                fixMinutes == null ? null : tenths(fixMinutes),
                parts == 0 ? null : DemoLots.euros(parts),
                passed,
                works ? Quantity.of(dice.whole(2, 24)) : null,
                close,
                lines ? set.grade == Grade.C ? Residual.FAINT : Residual.NONE : null,
                set.grade,
                works ? Boolean.valueOf(dice.chance(.985)) : null,
                works ? Boolean.valueOf(dice.chance(.99)) : null,
                null));
    }

    private void offer(DemoSet set) {
        LocalDate day = today.plusDays(dice.whole(0, 2));
        double asked = worth(set) * dice.uniform(1.02, 1.12);
        at(day, () -> facts.add(new Offer(set.unit, today, DemoLots.euros(asked), "web")));
        at(day.plusDays(3 + (int) dice.exponential(17)), () -> sell(set, worth(set) * dice.uniform(.93, 1.05)));
    }

    private double worth(DemoSet set) {
        double months = FIRST_DAY.until(today).toTotalMonths() + today.getDayOfMonth() / DAYS_A_MONTH;
        double grade = set.grade == Grade.A ? 1.12 : set.grade == Grade.C ? .8 : 1;
        return set.family.price() * grade * StrictMath.exp(PRICE_TREND_A_MONTH * months) * dice.logNormal(1, .09);
    }

    private void sell(DemoSet set, double gross) {
        boolean web = dice.chance(.7);
        exit(
                set,
                ExitKind.SOLD,
                gross,
                web ? .09 * gross : 0,
                web && dice.chance(.6) ? dice.uniform(14, 32) : 0,
                dice.uniform(8, 18),
                web ? "web" : "counter");
        if (dice.chance(set.masked ? .055 : .03)) {
            at(today.plusDays(4 + (int) dice.exponential(30)), () -> comeback(set, gross));
        }
    }

    private void comeback(DemoSet set, double gross) {
        boolean restocked = dice.chance(.6);
        facts.add(new Comeback(
                set.unit,
                today,
                set.fault.equals(Fault.NONE_FOUND) ? null : set.fault,
                DemoLots.euros(gross * (restocked ? 1 : dice.uniform(.3, .6))),
                DemoLots.euros(dice.uniform(12, 30)),
                restocked));
        if (restocked) {
            set.tries = 0;
            at(today.plusDays(dice.whole(1, 6)), () -> bench.addFirst(set));
        }
    }

    /** Not to be saved: stripped, sold as it is or recycled within days. */
    private void letGo(DemoSet set) {
        double size = set.family.price() / 200;
        LocalDate day = today.plusDays(dice.whole(1, 9));
        double fate = dice.uniform(0, 1);
        boolean glass = set.fault.equals(Fault.PANEL_BROKEN);
        if (fate < (glass ? .82 : .62)) {
            double gross = dice.logNormal(30 * size + 6, .4);
            at(
                    day,
                    () -> exit(
                            set,
                            ExitKind.STRIPPED,
                            gross,
                            .1 * gross,
                            dice.uniform(3, 8),
                            dice.uniform(14, 34),
                            "parts"));
        } else if (!glass && fate < .8) {
            double gross = dice.logNormal(24 * size + 5, .35);
            at(day, () -> exit(set, ExitKind.SOLD, gross, 0, 0, dice.uniform(4, 9), "as seen"));
        } else {
            double fee = dice.uniform(2, 6);
            at(day, () -> exit(set, ExitKind.RECYCLED, 0, fee, 0, dice.uniform(3, 7), null));
        }
    }

    private void exit(
            DemoSet set,
            ExitKind kind,
            double gross,
            double fees,
            double shipping,
            double spent,
            @Nullable String channel) {
        boolean sale = kind == ExitKind.SOLD;
        facts.add(new Exit(
                set.unit,
                today,
                1,
                kind,
                null,
                DemoLots.euros(gross),
                fees == 0 ? null : DemoLots.euros(fees),
                shipping == 0 ? null : DemoLots.euros(shipping),
                null,
                tenths(minutes(spent)),
                channel,
                sale ? set.grade : null,
                sale && set.masked ? Boolean.valueOf(dice.chance(.97)) : null,
                null));
        set.grade = sale ? set.grade : null;
    }

    /** To a tenth of a minute, as a watch is read. */
    private static double minutes(double drawn) {
        return StrictMath.rint(drawn * 2) / 2;
    }

    private static Quantity tenths(double minutes) {
        return new Quantity(StrictMath.round(minutes * 10) * (Quantity.ONE / 10));
    }
}
