package org.salvedge.yield.study;

import java.time.YearMonth;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;

/**
 * Fourteen months of a shop. Lots of a few suppliers with their own ways come in, sets of one lot share damage and craft, the bench
 * takes them in turn, what passes is sold after a while at prices that drift, wander and have seasons, some come back, the rest is
 * stripped. At the beginning of the last month one thing changes.
 */
final class ChangedShop {
    static final YearMonth MONTH = YearMonth.of(2026, 2);

    private static final int MONTHS = 14;
    private static final int FIRST =
            (int) MONTH.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
    private static final int TURN = (int) MONTH.atDay(1).toEpochDay();
    private static final int LAST = (int) MONTH.atEndOfMonth().toEpochDay();
    private static final double DAYS_A_MONTH = 30.44;

    private static final String[] FAULTS = {
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
        "unknown"
    };
    private static final int COLUMN = 1;
    private static final int GLASS = 7;
    private static final int NONE_FOUND = 9;
    private static final int UNKNOWN = 10;
    private static final double[] USUAL = {.18, .08, .08, .18, .13, .09, .06, .08, .04, .05, .03};
    private static final String[] CLAIMS = {
        "horizontal_lines",
        "vertical_lines",
        "half_screen",
        "dim_patchy",
        "dead",
        "no_picture",
        "boot_loop",
        "cracked",
        "no_sound",
        "customer_return",
        "untested"
    };

    private record Supplier(String name, double truth, double glass, double[] claims, double share) {}

    private record Family(String name, double price, double[] weak, double ease) {}

    private final Change change;
    private final Chance chance;
    private final HistoryBuilder history = History.builder(Currency.getInstance("EUR"));
    private final Supplier[] suppliers;
    private final Family[] families;
    private final double[] level = new double[MONTHS + 2];
    private final double season;
    private final double wave;
    private final double minutesADay;
    /** Whether a change comes with the lots bought from then on and not with the day at the bench. */
    private final boolean byLot;

    private String what = "";
    private double strength;
    private double clock;
    private int sets;
    private int attempts;
    private int grade;
    private int touched;

    /** @param small 150 to 350 sets a month, else 300 to 700 */
    ChangedShop(Change change, long seed, boolean small) {
        this.change = change;
        chance = new Chance(seed * 7_919 + change.ordinal() * 104_729L);
        suppliers = new Supplier[chance.whole(4, 7)];
        for (int s = 0; s < suppliers.length; s++) {
            double[] claims = new double[CLAIMS.length];
            for (int c = 0; c < claims.length; c++) {
                claims[c] = chance.span(1) + .2;
            }
            suppliers[s] = new Supplier(
                    "Supplier " + (char) ('A' + s),
                    chance.between(.5, .9),
                    chance.of(.3) ? chance.between(.08, .16) : chance.between(.01, .05),
                    claims,
                    .4 + chance.span(1));
        }
        families = new Family[chance.whole(10, 18)];
        for (int f = 0; f < families.length; f++) {
            double[] weak = new double[FAULTS.length];
            for (int i = 0; i < weak.length; i++) {
                weak[i] = chance.logNormal(1, .4);
            }
            families[f] = new Family("F" + (f + 10), chance.logNormal(170, .4), weak, .3 * chance.normal());
        }
        double drift = chance.between(-.015, .004);
        for (int m = 1; m < level.length; m++) {
            level[m] = level[m - 1] + drift + .008 * chance.normal();
        }
        wave = chance.between(.02, .05);
        season = chance.between(0, 12);
        double gap = chance.between(small ? 7 : 3.5, small ? 14 : 7);
        byLot = chance.of(.5);
        minutesADay = 80 * 52 / gap;
        aim();
        run(gap);
    }

    private void aim() {
        switch (change) {
            case FIX_UP -> {
                what = new String[] {"contact_mask", "timing_board_swap", "power_board_repair", "main_board_swap"}
                        [chance.whole(0, 3)];
                strength = chance.between(.5, .65); // until then
            }
            case FIX_BAD -> {
                what = new String[] {"contact_mask", "led_strips", "power_board_repair", "main_board_swap"}
                        [chance.whole(0, 3)];
                strength = chance.between(.4, .6);
            }
            case MIX_WORSE -> strength = chance.between(.1, .2);
            case SUPPLIER_BAD -> {
                int most = 0;
                for (int s = 1; s < suppliers.length; s++) {
                    most = suppliers[s].share() > suppliers[most].share() ? s : most;
                }
                what = suppliers[most].name();
                strength = chance.between(.12, .24);
            }
            case PRICES_FALLEN -> strength = chance.between(.1, .2);
            case QUIET -> strength = 0;
        }
    }

    /** The truth: code of the fix or name of the supplier; "" where the change is of neither. */
    String what() {
        return what;
    }

    /** Sets of the last month that the change reached: sets of the supplier, attempts with the fix, sets of the other mix. */
    int touched() {
        return touched;
    }

    History history() {
        return history.build();
    }

    private void run(double gap) {
        double[] share =
                java.util.Arrays.stream(suppliers).mapToDouble(Supplier::share).toArray();
        double day = FIRST - 40;
        clock = workdays((int) day);
        for (int lot = 0; day < LAST - 2; lot++) {
            lot(lot, suppliers[chance.pick(share)], (int) day);
            day += chance.between(.5, 1.5) * gap;
        }
    }

    private static double workdays(int day) {
        return Math.floorDiv(day, 7) * 5 + Math.min(5, Math.floorMod(day, 7));
    }

    private static int day(double workdays) {
        int w = (int) workdays;
        return Math.floorDiv(w, 5) * 7 + Math.floorMod(w, 5);
    }

    private void lot(int number, Supplier supplier, int bought) {
        int arrival = bought + 3;
        String name = String.format(java.util.Locale.ROOT, "L%04d", number);
        history.lot(name, history.suppliers().number(supplier.name()), bought, arrival, 100_000, -1);
        int n = chance.whole(45, 115);
        double craft = .3 * chance.normal();
        double harm = chance.logNormal(1, .35);
        double faith = .08 * chance.normal();
        double[] taste = new double[CLAIMS.length];
        for (int c = 0; c < taste.length; c++) {
            taste[c] = supplier.claims()[c] * chance.logNormal(1, .5);
        }
        clock = Math.min(Math.max(clock, workdays(arrival)), workdays(arrival) + 18);
        for (int i = 0; i < n && day(clock) <= LAST; i++) {
            set(number, supplier, bought, arrival, taste, craft, harm, faith);
        }
    }

    private void set(
            int lot,
            Supplier supplier,
            int bought,
            int arrival,
            double[] taste,
            double craft,
            double harm,
            double faith) {
        int today = Math.max(arrival, day(clock));
        boolean changed = byLot ? bought >= TURN - 35 : today >= TURN;
        Family family = families[chance.whole(0, families.length - 1)];
        int claim = chance.pick(taste);
        boolean bad =
                change == Change.SUPPLIER_BAD && changed && supplier.name().equals(what);
        int fault = fault(family, supplier, claim, bad, changed, harm, faith);
        touched += today >= TURN && (bad || change == Change.MIX_WORSE && changed) ? 1 : 0;
        int id = sets++;
        history.set(
                id,
                lot,
                history.families().number(family.name()),
                history.makers().number("Kestrel"),
                history.models().number(family.name() + "-" + chance.whole(1, 3)),
                history.claims().number(CLAIMS[claim]),
                -1,
                -1,
                -1,
                -1,
                History.ARRIVED | History.ON_MANIFEST,
                -1,
                2_000);
        if (fault == GLASS && chance.of(.1)) { // seen on the pallet
            scrap(id, family, today, false);
            return;
        }
        bench(id, family, fault, today, craft + (bad ? StrictMath.log(.8) : 0));
    }

    private int fault(
            Family family, Supplier supplier, int claim, boolean bad, boolean changed, double harm, double faith) {
        if (chance.of(Math.min(.6, (supplier.glass() + (bad ? strength : 0)) * harm))) {
            return GLASS;
        }
        if (change == Change.MIX_WORSE && changed && chance.of(strength)) {
            return new int[] {GLASS, COLUMN, UNKNOWN}[chance.pick(.5, .35, .15)];
        }
        boolean honest = chance.of((supplier.truth() + faith) * (bad ? .7 : 1));
        double[] weights = new double[FAULTS.length];
        for (int f = 0; f < weights.length; f++) {
            weights[f] = (USUAL[f] + (honest && f == claim && claim < NONE_FOUND ? 2 : 0)) * family.weak()[f];
        }
        return chance.pick(weights);
    }

    private void bench(int id, Family family, int fault, int today, double craft) {
        double look = chance.logNormal(8, .5);
        if (fault == NONE_FOUND) {
            boolean passed = chance.of(.93);
            attempt(id, today, fault, "none", passed ? 1 : 0, look, -1, 0);
            end(id, family, today, passed);
            return;
        }
        int day = today;
        boolean passed = false;
        String tried = "";
        for (int turn = 0; turn < 2 && !passed; turn++) {
            Way way = way(fault, tried);
            if (way == null || turn == 0 && chance.of(.06)) {
                break;
            }
            tried = way.fix();
            double p = way.chance();
            if (way.fix().equals(what) && day >= TURN == (change == Change.FIX_BAD)) {
                p *= strength;
            }
            touched += way.fix().equals(what) && day >= TURN ? 1 : 0;
            double odds = StrictMath.log(p / (1 - p)) + craft + family.ease();
            passed = chance.of(1 / (1 + StrictMath.exp(-odds)));
            int verdict = passed ? 1 : chance.of(.3) ? -1 : 0;
            attempt(
                    id,
                    day,
                    fault,
                    way.fix(),
                    verdict,
                    turn == 0 ? look : -1,
                    chance.logNormal(way.minutes(), .5),
                    way.parts());
            day += passed || chance.of(.5) ? 0 : chance.whole(1, 6);
            if (!passed && chance.of(.5)) {
                break;
            }
        }
        if (tried.isEmpty()) {
            attempt(id, today, fault, "none", -1, look, -1, 0);
        }
        end(id, family, day, passed);
    }

    private @Nullable Way way(int fault, String tried) {
        double[] weights = Way.ALL.stream()
                .mapToDouble(w -> w.fault() == fault && !w.fix().equals(tried) ? w.share() : 0)
                .toArray();
        return java.util.Arrays.stream(weights).sum() > 0 ? Way.ALL.get(chance.pick(weights)) : null;
    }

    private void attempt(
            int id, int day, int fault, String fix, int passed, double look, double minutes, double parts) {
        grade = passed == 1 ? chance.pick(.5, .35, .15) : -1;
        clock += (Math.max(0, look) + Math.max(0, minutes)) / minutesADay;
        if (day > LAST) {
            return;
        }
        history.attempt(
                id,
                day,
                30_000 + attempts % 20_000,
                ++attempts,
                history.faults().number(FAULTS[fault]),
                history.fixes().number(fix),
                -1,
                passed,
                passed == 1 ? grade : -1,
                look < 0 ? -1 : StrictMath.round(look) * 1_000_000,
                minutes < 0 ? -1 : StrictMath.round(minutes) * 1_000_000,
                StrictMath.round(parts * 100));
    }

    private void end(int id, Family family, int day, boolean passed) {
        if (!passed) {
            scrap(id, family, day, chance.of(.1));
            return;
        }
        int sold = day + 1 + (int) (chance.span(10) + chance.span(10));
        sale(id, family, sold, grade == 2 ? .78 : grade == 1 ? .9 : 1);
        if (chance.of(.05)) {
            int back = sold + 1 + (int) chance.span(25);
            if (back <= LAST) {
                boolean restocked = chance.of(.6);
                history.comeback(id, back, 5_000, restocked ? 1 : 0, -1);
                if (restocked) {
                    scrap(id, family, back + 1, false);
                }
            }
        }
    }

    private void sale(int id, Family family, int day, double part) {
        if (day > LAST) {
            return;
        }
        double month = (day - FIRST + 40) / DAYS_A_MONTH;
        int m = (int) month;
        double log = level[Math.min(m, MONTHS)]
                + (month - m) * (level[Math.min(m, MONTHS) + 1] - level[Math.min(m, MONTHS)])
                + wave * StrictMath.cos(2 * Math.PI * (month + season) / 12);
        double fallen = change == Change.PRICES_FALLEN && day >= TURN ? 1 - strength : 1;
        double price =
                family.price() * StrictMath.exp(log) * fallen * part * chance.logNormal(1, chance.of(.05) ? .35 : .1);
        history.exit(id, day, 1, ExitKind.SOLD.ordinal(), 1, StrictMath.round(price * 100), 2_000, 10_000_000, -1, -1);
    }

    private void scrap(int id, Family family, int day, boolean asItIs) {
        int out = day + 1 + (int) chance.span(8);
        if (out > LAST) {
            return;
        }
        if (asItIs) {
            sale(id, family, out, .2);
        } else {
            history.exit(
                    id,
                    out,
                    1,
                    ExitKind.STRIPPED.ordinal(),
                    1,
                    StrictMath.round(family.price() * 10),
                    200,
                    10_000_000,
                    -1,
                    -1);
        }
    }
}
