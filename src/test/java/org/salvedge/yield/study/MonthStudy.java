package org.salvedge.yield.study;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.salvedge.shop.History;
import org.salvedge.yield.Cause;
import org.salvedge.yield.Causes;
import org.salvedge.yield.Outcomes;
import org.salvedge.yield.Signals;

/** Runs the review over shops with one change each and counts how often it names it first. */
final class MonthStudy {
    /** For looking at while the review is worked on (so were the shops from 10,000, 20,000 and 30,000 on). */
    static final long DEV_SEED = 1_000;
    /** For the table in the documentation, and for nothing before it. The table before had 900,001. */
    static final long FINAL_SEED = 3_300_001;

    private static final BigDecimal LABOUR = new BigDecimal("22");

    /**
     * @param first the likeliest cause is the true one, in the true direction
     * @param sure it stands out as well
     * @param alarm something stands out, or the charts of yield or minutes signal
     * @param wrong the first stands out and is not the truth
     */
    record Judged(boolean first, boolean sure, boolean alarm, boolean wrong, boolean chart, String said) {}

    private MonthStudy() {}

    static List<Judged> run(Change change, long firstSeed, int shops, boolean small) {
        List<Judged> all = new ArrayList<>();
        for (long seed = firstSeed; all.size() < shops; seed++) {
            ChangedShop shop = new ChangedShop(change, seed, small);
            if (shop.touched() >= fewest(change)) {
                all.add(judge(change, shop, seed));
            }
        }
        return all;
    }

    /** A change that hardly anything met in the month cannot be seen by anyone. */
    private static int fewest(Change change) {
        return switch (change) {
            case QUIET, PRICES_FALLEN -> 0;
            case FIX_UP, FIX_BAD, MIX_WORSE, SUPPLIER_BAD -> 40;
        };
    }

    private static Judged judge(Change change, ChangedShop shop, long seed) {
        History history = shop.history();
        Outcomes outcomes = Outcomes.of(history, LABOUR);
        List<Cause> causes = Causes.of(outcomes, ChangedShop.MONTH);
        Signals signals = Signals.of(outcomes, ChangedShop.MONTH);
        boolean outside = signals.yieldSignal(ChangedShop.MONTH) || signals.minutesSignal(ChangedShop.MONTH) != null;
        boolean any = causes.stream().anyMatch(Cause::standsOut);
        Cause top = causes.get(0);
        boolean right = isTruth(change, shop.what(), top);
        return new Judged(
                right,
                right && top.standsOut(),
                any || outside,
                !right && top.standsOut(),
                outside,
                seed + " truth " + shop.what() + ", said "
                        + causes.stream()
                                .limit(3)
                                .map(c -> String.format(
                                        Locale.ROOT,
                                        "%s %s %.3f (p %.5f)",
                                        c.kind().code(),
                                        c.what(),
                                        c.effect(),
                                        c.p()))
                                .toList());
    }

    private static boolean isTruth(Change change, String what, Cause said) {
        return switch (change) {
            case QUIET -> false;
            case FIX_UP -> said.kind() == Cause.Kind.FIX && said.what().equals(what) && said.up();
            case FIX_BAD -> said.kind() == Cause.Kind.FIX && said.what().equals(what) && !said.up();
            case MIX_WORSE -> said.kind() == Cause.Kind.MIX && !said.up();
            case SUPPLIER_BAD ->
                said.kind() == Cause.Kind.SUPPLIER && said.what().equals(what) && !said.up();
            case PRICES_FALLEN -> said.kind() == Cause.Kind.PRICE && !said.up();
        };
    }

    static String line(Change change, List<Judged> judged) {
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d %% | %d %% | %d %% | %d %% | %d %% |",
                change.words(),
                judged.size(),
                share(judged.stream().filter(Judged::first).count(), judged.size()),
                share(judged.stream().filter(Judged::sure).count(), judged.size()),
                share(judged.stream().filter(Judged::wrong).count(), judged.size()),
                share(judged.stream().filter(Judged::alarm).count(), judged.size()),
                share(judged.stream().filter(Judged::chart).count(), judged.size()));
    }

    private static long share(long part, int whole) {
        return Math.round(100.0 * part / whole);
    }
}
