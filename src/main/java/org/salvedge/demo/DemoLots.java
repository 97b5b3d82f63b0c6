package org.salvedge.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Buys the invented shop's lots: bids won and lost, what was listed, and what each set really is. */
final class DemoLots {
    private static final int DAYS_BETWEEN_LOTS = 13;
    private static final double PREMIUM = .12;
    private static final double RETAIL = 2.3;
    private static final List<Claim> VAGUE = List.of(Claim.UNTESTED, Claim.CUSTOMER_RETURN, Claim.DEAD, Claim.OTHER);
    private static final Map<Claim, String> WORDS = Map.ofEntries(
            Map.entry(Claim.HORIZONTAL_LINES, "lines across the screen"),
            Map.entry(Claim.VERTICAL_LINES, "vertical lines"),
            Map.entry(Claim.HALF_SCREEN, "half the screen dark"),
            Map.entry(Claim.NO_PICTURE, "sound but no picture"),
            Map.entry(Claim.DEAD, "no power"),
            Map.entry(Claim.BOOT_LOOP, "hangs at the logo"),
            Map.entry(Claim.NO_SOUND, "no sound"),
            Map.entry(Claim.CRACKED, "cracked screen"),
            Map.entry(Claim.UNTESTED, "untested"),
            Map.entry(Claim.CUSTOMER_RETURN, "customer return"),
            Map.entry(Claim.OTHER, "see photo"));

    private final Dice dice;
    private final List<Fact> facts;
    private int bids;

    DemoLots(Dice dice, List<Fact> facts) {
        this.dice = dice;
        this.facts = facts;
    }

    /** Buys lot number {@code number}; puts lot, sets and bid on record and returns the sets. */
    List<DemoSet> buy(int number, LocalDate day) {
        while (dice.chance(.3)) {
            lost(day.minusDays(dice.whole(1, 6)));
        }
        DemoSupplier supplier = dice.pick(DemoSupplier.ALL, s -> s.badFrom() == null ? 1 : .9);
        LotId lot = new LotId(String.format(Locale.ROOT, "L%04d", number));
        int size = dice.whole(42, 104);
        double damage = .45 * dice.normal();
        double fate = -.35 * damage + .3 * dice.normal();
        boolean retail = dice.chance(.6);
        List<DemoSet> sets = new ArrayList<>(size);
        List<Fact> rows = new ArrayList<>(size);
        double value = 0;
        for (int line = 1; line <= size; line++) {
            DemoSet set = listed(lot, line, supplier, day, damage, fate);
            sets.add(set);
            rows.add(row(set, lot, line, supplier, retail));
            value += set.family.price();
        }
        LocalDate received = day.plusDays(dice.whole(1, 5));
        double price = value * dice.uniform(.14, .215) * (supplier.badOn(day) ? .95 : 1);
        facts.add(new Lot(
                lot,
                supplier.name(),
                day,
                DemoShop.EUR,
                null,
                euros(price),
                euros(price * PREMIUM),
                euros(80 + 2.6 * size),
                null,
                Quantity.of(60 + 2L * size),
                received,
                null,
                null));
        facts.addAll(rows);
        bid(day, supplier, size, price, price * dice.uniform(1.0, 1.25), true, lot);
        return sets;
    }

    /** When the next lot is bought after one of this day. */
    LocalDate next(LocalDate day) {
        return day.plusDays(DAYS_BETWEEN_LOTS + dice.whole(-4, 4));
    }

    private void lost(LocalDate day) {
        int size = dice.whole(30, 120);
        double hammer = size * dice.uniform(14, 30);
        DemoSupplier supplier = dice.pick(DemoSupplier.ALL, s -> 1);
        bid(day, supplier, size, hammer, hammer * dice.uniform(.7, .99), false, null);
    }

    private void bid(
            LocalDate day,
            DemoSupplier supplier,
            int size,
            double hammer,
            double limit,
            boolean won,
            @org.jspecify.annotations.Nullable LotId lot) {
        double mean = limit * dice.uniform(1.35, 1.7);
        facts.add(new Bid(
                ++bids,
                day,
                supplier.name(),
                null,
                size,
                euros(limit),
                euros(mean),
                euros(mean * .74),
                euros(mean * .99),
                euros(mean * 1.27),
                won,
                euros(hammer),
                lot));
    }

    private DemoSet listed(LotId lot, int line, DemoSupplier supplier, LocalDate day, double damage, double fate) {
        DemoFamily family = dice.pick(DemoFamily.ALL, DemoFamily::share);
        boolean bad = supplier.badOn(day);
        double glass = Dice.logistic(Dice.logit(supplier.glass() + (bad ? .16 : 0)) + damage);
        Fault fault = dice.chance(glass)
                ? Fault.PANEL_BROKEN
                : dice.pick(
                                DemoBench.FAULTS,
                                s -> s.share()
                                        * (s.fault().equals(Fault.ROW_DRIVE)
                                                        || s.fault().equals(Fault.COLUMN_DRIVE)
                                                ? family.lines()
                                                : 1))
                        .fault();
        boolean hidden = fault.equals(Fault.PANEL_BROKEN) && dice.chance(bad ? .9 : .65);
        boolean honest = !hidden && dice.chance(supplier.truth() - (bad ? .2 : 0));
        Claim claim = honest ? DemoBench.honest(fault) : dice.pick(VAGUE, c -> c.equals(Claim.UNTESTED) ? 3 : 1);
        UnitId unit = new UnitId(String.format(Locale.ROOT, "%s-%03d", lot, line));
        return new DemoSet(unit, family, dice.whole(0, 4), fault, claim, !dice.chance(supplier.missing()), fate);
    }

    private TvSet row(DemoSet set, LotId lot, int line, DemoSupplier supplier, boolean retail) {
        TvSet.Builder row = TvSet.builder(set.unit, lot)
                .sheet(supplier.name().equals("Lindmark") ? "Pallets" : "Sheet1")
                .line(line + 1)
                .maker(set.family.maker())
                .model(set.family.model(set.variant))
                .family(set.family.beginning())
                .inches(Quantity.of(set.family.inches()))
                .rows(set.family.rows())
                .claimed(set.claim)
                .claimedText(WORDS.get(set.claim))
                .arrived(set.arrived);
        if (retail) {
            row.asking(euros(set.family.price() * RETAIL * dice.uniform(.9, 1.1)));
        }
        if (dice.chance(.7)) {
            row.serial(String.format(
                    Locale.ROOT,
                    "%c%c%08d",
                    'A' + dice.whole(0, 25),
                    'A' + dice.whole(0, 25),
                    dice.whole(0, 99_999_999)));
        }
        if (set.fault.equals(Fault.ROW_DRIVE) && dice.chance(.8)) {
            row.panel(set.family.panel(set.variant));
        }
        if (dice.chance(.15)) {
            row.incomplete(true);
        }
        return row.build();
    }

    /** Whole cents of a drawn amount. */
    static Money euros(double amount) {
        return Money.of(new BigDecimal(amount), DemoShop.EUR, RoundingMode.HALF_EVEN);
    }
}
