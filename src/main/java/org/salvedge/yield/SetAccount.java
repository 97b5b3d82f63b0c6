package org.salvedge.yield;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;

/**
 * What became of one set and what it made, by the counting rules. Amounts in the book's currency.
 *
 * @param standing where it stands now
 * @param minutes all that are known: attempts and exits
 * @param net takings less parts, refunds and labour so far; final where the set has gone
 * @param landed its share of the lot's landed cost; zero where it carries none
 */
public record SetAccount(TvSet set, Standing standing, Quantity minutes, Money net, Money landed) {
    /** Where a set stands. */
    public enum Standing {
        NOT_ARRIVED("did not arrive"),
        ON_BENCH("on the bench"),
        PASSED("passed"),
        SOLD("sold"),
        STRIPPED("stripped"),
        RECYCLED("recycled"),
        RETURNED("returned to the seller"),
        LOST("lost");

        private final String words;

        Standing(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        /** Whether its margin is final. */
        public boolean isFinal() {
            return ordinal() >= SOLD.ordinal();
        }
    }

    /** Net recovery less landed cost. */
    public Money margin() {
        return net.minus(landed);
    }

    /**
     * Accounts of sets of one lot.
     *
     * @param facts of each set in turn: its attempts, exits and comebacks, other facts are passed over
     */
    public static List<SetAccount> of(
            Lot lot, List<TvSet> sets, List<List<Fact>> facts, BigDecimal labourRate, Currency book) {
        HistoryBuilder rows = History.builder(book);
        rows.lot(
                lot.lot().value(),
                rows.suppliers().number(lot.supplier()),
                (int) lot.boughtOn().toEpochDay(),
                (int) lot.arrivalDay().toEpochDay(),
                lot.landedCost(book).minor(),
                micros(lot.minutes()));
        for (int i = 0; i < sets.size(); i++) {
            set(rows, i, sets.get(i));
            for (Fact fact : facts.get(i)) {
                event(rows, i, fact);
            }
        }
        Outcomes outcomes = Outcomes.of(rows.build(), labourRate);
        List<SetAccount> accounts = new ArrayList<>();
        for (int i = 0; i < sets.size(); i++) {
            accounts.add(new SetAccount(
                    sets.get(i),
                    standing(outcomes, i),
                    new Quantity(outcomes.micros(i)),
                    new Money(outcomes.net(i), book),
                    new Money(outcomes.landed(i), book)));
        }
        return accounts;
    }

    /** What labour on the lot as a whole costs; in no set's account. */
    public static Money labour(Lot lot, BigDecimal labourRate, Currency book) {
        return new Money(new Labour(labourRate, book).minor(Math.max(0, micros(lot.minutes()))), book);
    }

    private static void set(HistoryBuilder rows, int id, TvSet set) {
        rows.set(
                id,
                0,
                rows.families().number(set.family()),
                rows.makers().number(set.maker()),
                rows.models().number(set.model()),
                rows.claims().number(set.claimed().code()),
                micros(set.inches()),
                -1,
                -1,
                -1,
                set.arrived() ? History.ARRIVED : 0,
                -1,
                set.landedCost() == null ? -1 : set.landedCost().minor());
    }

    private static void event(HistoryBuilder rows, int id, Fact fact) {
        if (fact instanceof Attempt a) {
            rows.attempt(
                    id,
                    (int) a.startedAt().toLocalDate().toEpochDay(),
                    a.startedAt().toLocalTime().toSecondOfDay(),
                    a.number(),
                    rows.faults().number(a.fault().code()),
                    rows.fixes().number(a.fix().code()),
                    -1,
                    a.passed() == null ? -1 : a.passed() ? 1 : 0,
                    -1,
                    micros(a.diagnosisMinutes()),
                    micros(a.fixMinutes()),
                    minor(a.partsCost()));
        } else if (fact instanceof Exit e) {
            long costs = minor(e.fees()) + minor(e.shipping()) + minor(e.tax());
            rows.exit(
                    id,
                    (int) e.on().toEpochDay(),
                    e.seq(),
                    e.kind().ordinal(),
                    e.leaves() ? 1 : 0,
                    e.gross().minor(),
                    costs,
                    micros(e.minutes()),
                    -1,
                    -1);
        } else if (fact instanceof Comeback c) {
            rows.comeback(
                    id, (int) c.on().toEpochDay(), minor(c.refund()) + minor(c.cost()), c.restocked() ? 1 : 0, -1);
        }
    }

    private static Standing standing(Outcomes outcomes, int set) {
        if (outcomes.gone(set)) {
            ExitKind how = ExitKind.values()[outcomes.history().exitKind(outcomes.exit(set))];
            return Standing.valueOf(how.name());
        }
        if (!outcomes.history().arrived(set)) {
            return Standing.NOT_ARRIVED;
        }
        return outcomes.passed(set) ? Standing.PASSED : Standing.ON_BENCH;
    }

    private static long micros(@Nullable Quantity quantity) {
        return quantity == null ? -1 : quantity.millionths();
    }

    private static long minor(@Nullable Money money) {
        return money == null ? 0 : money.minor();
    }
}
