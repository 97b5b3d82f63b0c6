package org.salvedge.worth.study;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** One shop of a world: its truth, its diary, and the lots that it could buy next. */
final class InventedShop {
    private static final int FIRST_DAY = (int) LocalDate.of(2023, 1, 2).toEpochDay();
    private static final int ORACLE_PEEK = 12;

    /**
     * One lot offered.
     *
     * @param spoiled from the supplier that turned bad
     * @param known share of its sets whose model the history has
     */
    record Candidate(Listing listing, Offer offer, long outcome, boolean spoiled, double known) {}

    private final World world;
    private final List<Family> families;
    private final Bench bench;
    private final Market market;
    private final int lastDay;
    private final double benchFree;
    private final ShopSnapshot snapshot;
    private final Diary diary;
    private final List<Candidate> candidates = new ArrayList<>();
    private final List<Long> bought = new ArrayList<>();

    /** @param offered number of lots offered on the day after the last */
    InventedShop(World world, long seed, int offered) {
        this.world = world;
        World.Knobs knobs = world.knobs();
        Dice dice = new Dice(seed * 1_000_003 + world.ordinal());
        int lots = dice.whole(knobs.fewestLots(), knobs.mostLots());
        double gap = dice.between(10, 18);
        lastDay = (int) (lots * gap) + 10;
        families = Catalogue.draw(lastDay, knobs.unseen() > 0 ? 14 : 3, dice.split());
        market = Market.draw(knobs.regime(), lastDay, dice.split());
        Dice supply = dice.split();
        List<Supplier> suppliers = new ArrayList<>();
        int known = supply.whole(4, 7);
        for (int s = 0; s < known; s++) {
            suppliers.add(Supplier.draw("Supplier " + (char) ('A' + s), supply));
        }
        int[] by = sequence(suppliers, lots, supply);
        int bad = -1;
        int badFrom = lots;
        Supplier after = suppliers.get(0);
        if (knobs.badSupplier()) {
            bad = by[lots - 1];
            badFrom = nthLast(by, bad, supply.whole(2, 8));
            after = suppliers.get(bad).goneBad(supply);
        }
        int learnt = knobs.fixLearnt() ? lastDay - supply.whole(120, 240) : -9999;
        double meanSize = 0;
        for (int s : by) {
            meanSize += suppliers.get(s).lotSize() / lots;
        }
        bench = Bench.draw(meanSize * 35 / (gap * 5 / 7), learnt, dice.split());
        diary = new Diary(families, FIRST_DAY);
        double free = 0;
        Dice days = dice.split();
        for (int i = 0; i < lots; i++) {
            int day = Math.min(lastDay - 6, (int) ((i + days.uniform()) * gap));
            Supplier supplier = by[i] == bad && i >= badFrom ? after : suppliers.get(by[i]);
            Listing listing = Listing.draw(supplier, day, families, market, 0, days.split());
            free = buy(listing, free, days.split());
        }
        benchFree = free;
        snapshot = new ShopSnapshot(diary.asOf(lastDay), FIRST_DAY + lastDay, BigDecimal.valueOf(bench.labourRate()));
        offer(offered, suppliers, bad, after, dice.split());
    }

    /** The bad supplier is the one of the last lot, so it must have lots enough: shares differ by chance. */
    private static int[] sequence(List<Supplier> suppliers, int lots, Dice dice) {
        double[] share = suppliers.stream().mapToDouble(s -> 0.15 + s.share()).toArray();
        int[] by = new int[lots];
        for (int i = 0; i < lots; i++) {
            by[i] = dice.pick(share);
        }
        return by;
    }

    private static int nthLast(int[] by, int supplier, int n) {
        int seen = 0;
        for (int i = by.length - 1; i >= 0; i--) {
            if (by[i] == supplier && ++seen == n) {
                return i;
            }
        }
        return by.length * 3 / 4;
    }

    private double buy(Listing listing, double free, Dice dice) {
        Market known = market.future(dice.split()); // beyond the last day nothing of it is seen
        LotFate fate = LotFate.draw(
                listing.supplier, world.knobs().lotEffect(), world.knobs().gradeSpread(), dice);
        Recorder recorder = diary.lotRecorder();
        LotRun run = new LotRun(
                families, bench, world.knobs().gradeSpread(), listing, fate, known, free, recorder, dice.split());
        bought.add(run.run());
        double worth = 0;
        for (int i = 0; i < ORACLE_PEEK; i++) {
            worth += draw(listing, free, dice.split()) / (double) ORACLE_PEEK;
        }
        diary.add(listing, run.arrival(), Math.max(100, Math.round(worth * dice.between(0.55, 0.95))));
        return run.benchFree();
    }

    private void offer(int offered, List<Supplier> suppliers, int bad, Supplier after, Dice dice) {
        double[] share = suppliers.stream().mapToDouble(s -> 0.15 + s.share()).toArray();
        for (int i = 0; i < offered; i++) {
            Dice own = dice.split();
            boolean spoiled = bad >= 0 && own.chance(0.4);
            int s = own.pick(share);
            boolean fromBad = spoiled || s == bad;
            Supplier supplier =
                    fromBad ? after : own.chance(0.03) ? Supplier.draw("Supplier new " + i, own) : suppliers.get(s);
            Listing listing = Listing.draw(
                    supplier, lastDay + 1, families, market, world.knobs().unseen(), own.split());
            long outcome = draw(listing, benchFree, own.split());
            int known = 0;
            for (String model : listing.model) {
                known += model != null && snapshot.history().models().find(model) >= 0 ? 1 : 0;
            }
            candidates.add(new Candidate(
                    listing, listing.offer(families, FIRST_DAY), outcome, fromBad, known / (double) listing.sets()));
        }
    }

    /** One possible net recovery of a lot, minor units: fate of the lot, future of prices and luck of each set drawn anew. */
    private long draw(Listing listing, double free, Dice dice) {
        LotFate fate = LotFate.draw(
                listing.supplier, world.knobs().lotEffect(), world.knobs().gradeSpread(), dice);
        return new LotRun(
                        families,
                        bench,
                        world.knobs().gradeSpread(),
                        listing,
                        fate,
                        market.future(dice),
                        free,
                        Recorder.NOBODY,
                        dice)
                .run();
    }

    /** What one who knows the world would say of the candidate. */
    Forecast oracle(Candidate candidate, int draws, long seed) {
        Dice dice = new Dice(seed);
        double[] values = new double[draws];
        for (int i = 0; i < draws; i++) {
            values[i] = draw(candidate.listing(), benchFree, dice) / 100.0;
        }
        return Forecast.ofDraws(values);
    }

    ShopSnapshot snapshot() {
        return snapshot;
    }

    /** What each lot bought will have brought in the end, minor units; in order of purchase. */
    List<Long> recoveries() {
        return List.copyOf(bought);
    }

    List<Candidate> candidates() {
        return List.copyOf(candidates);
    }

    /** All that ever comes of the lots bought, as it stands when nothing more happens. */
    ShopSnapshot inTheEnd() {
        return new ShopSnapshot(diary.asOf(lastDay + 3000), FIRST_DAY + lastDay + 3000, snapshot.labourRate());
    }
}
