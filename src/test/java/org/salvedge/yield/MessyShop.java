package org.salvedge.yield;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * Possible histories in which everything that the rules speak of happens often: several entries on one day, what is not known,
 * parts sold on their own, comebacks kept and restocked, sets lost, returned and never arrived. Not like a real shop.
 */
public final class MessyShop {
    public static final Currency EUR = Currency.getInstance("EUR");
    private static final LocalDate FIRST = LocalDate.of(2024, 11, 20);
    private static final List<String> PEOPLE = List.of("Ines", "Joost", "Åse", "\ud83d\ude00");
    private static final int MOST_TURNS = 4;

    private final SplittableRandom random;
    private final List<Fact> facts = new ArrayList<>();
    private int attempts;

    private MessyShop(long seed) {
        random = new SplittableRandom(seed);
    }

    public static List<Fact> facts(int sets, long seed) {
        MessyShop shop = new MessyShop(seed);
        int lots = Math.max(1, sets / 40);
        for (int l = 0; l < lots; l++) {
            shop.lot(l, sets / lots + (l < sets % lots ? 1 : 0));
        }
        return shop.facts;
    }

    private void lot(int l, int sets) {
        LotId id = new LotId(String.format(Locale.ROOT, "L%04d", l + 1));
        LocalDate bought = FIRST.plusDays(random.nextInt(300));
        LocalDate received = chance(.5) ? null : bought.plusDays(random.nextInt(5));
        facts.add(new Lot(
                id,
                "Supplier " + random.nextInt(5),
                bought,
                EUR,
                null,
                money(100_000).plus(new Money(50_000, EUR)),
                null,
                null,
                null,
                null,
                received,
                null,
                null));
        for (int s = 0; s < sets; s++) {
            set(id, s, received == null ? bought : received);
        }
    }

    private void set(LotId lot, int s, LocalDate arrival) {
        UnitId unit = new UnitId(lot.value() + String.format(Locale.ROOT, "-%03d", s + 1));
        boolean arrived = chance(.96);
        int family = (int) (12 * Math.pow(random.nextDouble(), 2));
        facts.add(TvSet.builder(unit, lot)
                .maker("Maker " + family % 4)
                .model("F" + family + "-" + random.nextInt(3))
                .family("F" + family)
                .inches(
                        chance(.1)
                                ? null
                                : Quantity.parse(List.of("31.5", "55", "54.499999", "64.5")
                                        .get(family % 4)))
                .claimed(chance(.5) ? Claim.UNTESTED : Claim.DEAD)
                .arrived(arrived)
                .landedCost(arrived && chance(.2) ? money(1_000) : null)
                .build());
        if (arrived) {
            live(unit, arrival);
        } else if (chance(.5)) {
            exit(unit, arrival.plusDays(3), 1, ExitKind.RETURNED, true);
        }
    }

    /** Stays in the shop, one after another, each ended by an exit. */
    private void live(UnitId unit, LocalDate arrival) {
        LocalDate day = arrival;
        int seq = 1;
        while (chance(.97)) {
            int turns = random.nextInt(MOST_TURNS);
            boolean passed = false;
            for (int t = 0; t < turns && !passed; t++) {
                day = day.plusDays(random.nextInt(12));
                passed = attempt(unit, day);
            }
            if (chance(.15)) {
                exit(unit, day, seq++, ExitKind.STRIPPED, false);
            }
            if (chance(.25)) {
                return;
            }
            day = day.plusDays(chance(.3) ? 0 : random.nextInt(40));
            ExitKind kind =
                    passed && chance(.9) || chance(.1) ? ExitKind.SOLD : ExitKind.values()[1 + random.nextInt(4)];
            exit(unit, day, seq++, kind, true);
            if (kind != ExitKind.SOLD || chance(.6)) {
                return;
            }
            LocalDate from = day;
            int kept = 0;
            while (chance(.3) && kept < 2) {
                day = day.plusDays(1 + random.nextInt(60));
                comeback(unit, day, false);
                kept++;
            }
            if (chance(.5)) {
                return;
            }
            day = kept == 0 && chance(.2) ? from : day.plusDays(1 + random.nextInt(60));
            boolean sameDay = day.equals(from);
            comeback(unit, day, true);
            // What happens on the day of a comeback comes after it only where the set had left before that day.
            day = sameDay ? day.plusDays(1) : day;
        }
    }

    private boolean attempt(UnitId unit, LocalDate day) {
        boolean fixed = chance(.8);
        Fix fix = fixed ? pick(List.of(Fix.CONTACT_MASK, Fix.LED_STRIPS, Fix.RESEAT_CABLE)) : Fix.NONE;
        Fault fault = pick(List.of(Fault.ROW_DRIVE, Fault.BACKLIGHT, Fault.PANEL_BROKEN, Fault.NONE_FOUND));
        Boolean passed = chance(fixed ? .25 : .8) ? null : chance(.6);
        facts.add(new Attempt(
                ++attempts,
                unit,
                LocalDateTime.of(day.getYear(), day.getMonth(), day.getDayOfMonth(), 9 + random.nextInt(3), 0),
                chance(.15) ? null : pick(PEOPLE),
                fault,
                fix,
                chance(.2) ? null : minutes(),
                chance(.2) ? null : minutes(),
                chance(.3) ? null : money(3_000),
                passed,
                null,
                null,
                null,
                Boolean.TRUE.equals(passed) && chance(.8) ? pick(List.of(Grade.values())) : null,
                null,
                null,
                null));
        return Boolean.TRUE.equals(passed);
    }

    private void exit(UnitId unit, LocalDate day, int seq, ExitKind kind, boolean gone) {
        facts.add(new Exit(
                unit,
                day,
                seq,
                kind,
                gone ? (chance(.5) ? null : Boolean.TRUE) : Boolean.FALSE,
                money(20_000),
                chance(.3) ? null : money(2_000),
                chance(.3) ? null : money(2_000),
                chance(.8) ? null : money(900),
                chance(.3) ? null : minutes(),
                null,
                chance(.4) ? pick(List.of(Grade.values())) : null,
                null,
                null));
    }

    private void comeback(UnitId unit, LocalDate day, boolean restocked) {
        facts.add(new Comeback(
                unit, day, null, chance(.3) ? null : money(15_000), chance(.3) ? null : money(2_000), restocked));
    }

    private Quantity minutes() {
        return Quantity.of(BigDecimal.valueOf(random.nextInt(4_000), 2));
    }

    private Money money(int bound) {
        return new Money(random.nextInt(bound), EUR);
    }

    private boolean chance(double p) {
        return random.nextDouble() < p;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
