package org.salvedge.shop;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Random histories that can have happened, for property tests: every kind of fact, every column filled now and then, odd texts,
 * lots in other currencies. The same seed gives the same history; facts come in an order in which they can be recorded.
 */
public final class Histories {
    private static final String[] ODD = {
        "plain",
        "comma, inside",
        "a \"quoted\" word",
        "two\nlines",
        "crlf\r\nline",
        " spaces at the ends ",
        "日本語 テレビ",
        "\uD83D\uDCFA set",
        "=1+1",
        "-2",
        "'",
        ";",
        "semi;colon\ttab",
        "é è ü",
        "'quoted'",
        "\"",
        ",",
        "#hash",
        "0",
        "true"
    };
    private static final String[] SUPPLIERS = {"Kavo Salvage", "Lumri Salvage", "Zürcher Posten, Söhne", "O\"Dal"};
    private static final List<Fault> FAULTS = List.copyOf(Fault.BUILT_IN.keySet());
    private static final List<Fix> FIXES = List.copyOf(Fix.BUILT_IN.keySet());
    private static final List<Claim> CLAIMS = List.copyOf(Claim.BUILT_IN.keySet());

    private final SplittableRandom random;
    private final Currency book;
    private final List<Fact> facts = new ArrayList<>();
    private final List<UnitId> units = new ArrayList<>();
    private int attempts;
    private int parts;

    private Histories(long seed, Currency book) {
        random = new SplittableRandom(seed);
        this.book = book;
    }

    /** A history of some lots in a book kept in euros; nothing in it is later than 2026-06. */
    public static List<Fact> random(long seed, int lots) {
        return random(seed, lots, Facts.EUR);
    }

    public static List<Fact> random(long seed, int lots, Currency book) {
        Histories histories = new Histories(seed, book);
        for (int l = 1; l <= lots; l++) {
            histories.lot(l);
        }
        histories.recipes();
        histories.bids(lots);
        return histories.facts;
    }

    /** The last day on which something in a history happened. */
    public static LocalDate lastDay(List<Fact> facts) {
        LocalDate last = LocalDate.EPOCH;
        for (Fact fact : facts) {
            LocalDate day = fact instanceof Lot lot
                    ? lot.arrivalDay()
                    : fact instanceof Attempt a
                            ? a.startedAt().toLocalDate()
                            : fact instanceof Exit e ? e.on() : fact instanceof Comeback c ? c.on() : last;
            last = day.isAfter(last) ? day : last;
        }
        return last;
    }

    private boolean chance(double p) {
        return random.nextDouble() < p;
    }

    private <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private String odd() {
        return ODD[random.nextInt(ODD.length)];
    }

    private @Nullable String maybeOdd() {
        return chance(0.3) ? odd() : null;
    }

    private Money money(int largest, Currency currency) {
        return new Money(random.nextInt(largest), currency);
    }

    private @Nullable Money maybeMoney(int largest, Currency currency) {
        return chance(0.5) ? money(largest, currency) : null;
    }

    private @Nullable Quantity maybeMinutes() {
        if (chance(0.3)) {
            return null;
        }
        return chance(0.1) ? new Quantity(random.nextInt(90_000_000)) : new Quantity(random.nextInt(900) * 100_000L);
    }

    private @Nullable Boolean maybe() {
        return chance(0.4) ? null : (Boolean) chance(0.5);
    }

    private <E extends Enum<E>> @Nullable E maybe(Class<E> type) {
        E[] all = type.getEnumConstants();
        return chance(0.5) ? null : all[random.nextInt(all.length)];
    }

    private void lot(int number) {
        Currency currency = chance(0.7) ? book : Currency.getInstance(one(List.of("JPY", "KWD", "USD", "EUR")));
        BigDecimal rate = currency.equals(book)
                ? chance(0.2) ? BigDecimal.ONE : null
                : BigDecimal.valueOf(random.nextInt(1, 40_000), 4);
        LocalDate bought = LocalDate.of(2024, 1, 1).plusDays(random.nextInt(600));
        LotId id = new LotId((chance(0.2) ? "Löt " : "L") + number);
        Lot lot = new Lot(
                id,
                SUPPLIERS[random.nextInt(SUPPLIERS.length)],
                bought,
                currency,
                rate,
                money(500_000, currency),
                maybeMoney(50_000, currency),
                maybeMoney(50_000, currency),
                maybeMoney(5_000, currency),
                maybeMinutes(),
                chance(0.6) ? bought.plusDays(random.nextInt(20)) : null,
                chance(0.5) ? one(List.of(Basis.EQUAL, Basis.AREA, Basis.VALUE)) : null,
                maybeOdd());
        facts.add(lot);
        int sets = random.nextInt(8);
        List<UnitId> here = new ArrayList<>();
        for (int s = 1; s <= sets; s++) {
            TvSet set = set(lot, number, s);
            facts.add(set);
            units.add(set.unit());
            if (set.arrived()) {
                here.add(set.unit());
            } else if (chance(0.3)) {
                facts.add(exit(set.unit(), lot.arrivalDay().plusDays(3), 1, ExitKind.RETURNED));
            }
        }
        for (UnitId unit : here) {
            life(unit, lot.arrivalDay());
        }
    }

    private TvSet set(Lot lot, int lotNumber, int number) {
        int model = random.nextInt(5);
        boolean other = chance(0.1);
        return TvSet.builder(new UnitId("L" + lotNumber + (chance(0.1) ? "–" : "-") + number), lot.lot())
                .sheet(chance(0.3) ? odd() : null)
                .line(chance(0.9) ? number : null)
                .maker(chance(0.9) ? "Maker " + model : TvSet.UNKNOWN)
                .model("M" + model + "-" + random.nextInt(3))
                .family("M" + model)
                .serial(chance(0.4) ? "00" + random.nextInt(99_999) : null)
                .inches(chance(0.8) ? Quantity.parse(one(List.of("24", "31.5", "55", "64.5", "75"))) : null)
                .listedMaker(other ? "Maker 9" : null)
                .listedModel(other ? "M9" : null)
                .listedInches(other ? Quantity.of(50) : null)
                .rows(chance(0.5) ? 1080 : null)
                .panel(chance(0.4) ? "P" + random.nextInt(4) : null)
                .claimed(one(CLAIMS))
                .claimedText(maybeOdd())
                .asking(maybeMoney(90_000, lot.currency()))
                .incomplete(maybe())
                .place(chance(0.3) ? "shelf " + random.nextInt(9) : null)
                .waitingFor(chance(0.1) ? odd() : null)
                .expectedOn(chance(0.1) ? LocalDate.of(2030, 1, 1) : null)
                .arrived(chance(0.9))
                .build();
    }

    private void life(UnitId unit, LocalDate from) {
        LocalDate day = from.plusDays(random.nextInt(4));
        for (int stay = 0; stay < 3; stay++) {
            for (int turn = random.nextInt(4); turn > 0; turn--) {
                attempt(unit, day);
                day = day.plusDays(random.nextInt(3));
            }
            if (chance(0.1)) {
                facts.add(strippedOf(unit, day));
            }
            if (chance(0.3)) {
                facts.add(new Offer(unit, day, money(40_000, book), chance(0.5) ? "web" : null));
            }
            if (chance(0.2)) {
                return;
            }
            ExitKind kind = chance(0.6) ? ExitKind.SOLD : ExitKind.values()[random.nextInt(5)];
            facts.add(exit(unit, day, 7, kind));
            if (kind != ExitKind.SOLD || chance(0.6)) {
                return;
            }
            day = day.plusDays(random.nextInt(1, 30)); // the next exit is on another day
            boolean restocked = chance(0.6);
            facts.add(new Comeback(
                    unit,
                    day,
                    chance(0.5) ? one(FAULTS) : null,
                    maybeMoney(20_000, book),
                    maybeMoney(2_000, book),
                    restocked));
            if (!restocked) {
                return;
            }
        }
    }

    private void attempt(UnitId unit, LocalDate day) {
        Fault fault = one(FAULTS);
        Fix fix = one(FIXES);
        Boolean passed = fix.equals(Fix.NONE) && fault.equals(Fault.UNKNOWN) ? null : maybe();
        facts.add(new Attempt(
                ++attempts,
                unit,
                day.atTime(8 + random.nextInt(10), random.nextInt(60), random.nextInt(60)),
                chance(0.7) ? one(List.of("Ada", "Bo, jun.", "Cem")) : null,
                fault,
                fix,
                maybeMinutes(),
                maybeMinutes(),
                maybeMoney(9_000, book),
                passed,
                chance(0.3) ? Quantity.parse("4.25") : null,
                maybe(Residual.class),
                maybe(Residual.class),
                Boolean.TRUE.equals(passed) ? maybe(Grade.class) : null,
                maybe(),
                maybe(),
                maybeOdd()));
        if (chance(0.1)) {
            facts.add(new Part(
                    "P" + ++parts,
                    chance(0.5) ? one(units) : null,
                    PartKind.values()[random.nextInt(PartKind.values().length)],
                    maybeOdd(),
                    day,
                    money(4_000, book),
                    maybe(PartTest.class),
                    chance(0.5) ? (Integer) attempts : null,
                    chance(0.3) ? day.plusDays(2) : null));
        }
    }

    private Exit strippedOf(UnitId unit, LocalDate day) {
        return new Exit(
                unit,
                day,
                3,
                ExitKind.STRIPPED,
                false,
                money(3_000, book),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    private Exit exit(UnitId unit, LocalDate day, int seq, ExitKind kind) {
        boolean sold = kind == ExitKind.SOLD;
        return new Exit(
                unit,
                day,
                seq,
                kind,
                chance(0.5) ? null : Boolean.TRUE,
                money(60_000, book),
                maybeMoney(5_000, book),
                maybeMoney(3_000, book),
                maybeMoney(3_000, book),
                maybeMinutes(),
                sold ? maybeOdd() : null,
                sold ? maybe(Grade.class) : null,
                maybe(),
                maybeOdd());
    }

    private void recipes() {
        for (int p = 0; p < random.nextInt(4); p++) {
            for (Side side : Side.values()) {
                facts.add(new Recipe(
                        "P" + p,
                        side,
                        "3 4 " + (5 + random.nextInt(30)),
                        maybeOdd(),
                        maybe(Residual.class),
                        maybe(Residual.class),
                        chance(0.5) ? 4 : null,
                        chance(0.5) ? null : (Integer) 0,
                        maybeOdd()));
            }
        }
    }

    private void bids(int lots) {
        List<Integer> numbers = new ArrayList<>();
        for (int b = 1; b <= random.nextInt(9); b++) {
            numbers.add(b * 3);
        }
        Collections.reverse(numbers);
        for (int number : numbers) {
            boolean won = lots > 0 && chance(0.4);
            facts.add(new Bid(
                    number,
                    LocalDate.of(2024, 3, 1).plusDays(random.nextInt(300)),
                    chance(0.8) ? SUPPLIERS[random.nextInt(SUPPLIERS.length)] : null,
                    chance(0.5) ? "ab".repeat(32) : null,
                    chance(0.5) ? (Integer) random.nextInt(300) : null,
                    maybeMoney(300_000, book),
                    maybeMoney(300_000, book),
                    chance(0.3) ? money(9_000, book).negated() : null,
                    maybeMoney(300_000, book),
                    maybeMoney(300_000, book),
                    won ? Boolean.TRUE : maybe(),
                    maybeMoney(300_000, book),
                    won ? ((Lot) facts.get(0)).lot() : null));
        }
    }
}
