package org.salvedge.cli;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.UnitId;
import org.salvedge.stats.LargestRemainder;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Sets leave the shop. Several may go for one sum: every amount is then shared alike, by largest remainder. Each way to leave
 * offers those of the options below that it has, in its own words, and sets them here.
 */
abstract class ExitCommand extends Recording {
    @Parameters(
            arity = "1..*",
            paramLabel = "UNIT",
            description = "The set's label, or enough of it to be the only one; several share every amount alike.")
    List<String> units = new ArrayList<>();

    @Option(names = "--on", paramLabel = "DATE", description = "The day (default: today).")
    @Nullable
    LocalDate on;

    @Nullable
    Amount gross;

    @Nullable
    Amount fees;

    @Nullable
    Amount shipping;

    @Nullable
    Amount tax;

    @Nullable
    Quantity minutes;

    /** No: only a part of the set brought money, the set itself stays. */
    @Nullable
    Boolean gone;

    @Nullable
    String channel;

    @Nullable
    Grade grade;

    abstract ExitKind kind();

    @Override
    List<Put> record(Session session, Ledger ledger) {
        return put(ledger, exits(session, ledger, UnitPick.units(ledger, units)));
    }

    final List<Exit> exits(Session session, Ledger ledger, List<UnitId> sets) {
        Currency book = session.shop().settings().currency();
        LocalDate day = on == null ? session.today() : on;
        int n = sets.size();
        List<@Nullable Money> grossShares = shares(gross, book, "--gross", n);
        List<@Nullable Money> feesShares = shares(fees, book, "--fees", n);
        List<@Nullable Money> shippingShares = shares(shipping, book, "--shipping", n);
        List<@Nullable Money> taxShares = shares(tax, book, "--tax", n);
        List<@Nullable Quantity> minutesShares = shares(minutes, n);
        List<Exit> exits = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Money takings = grossShares.get(i);
            exits.add(new Exit(
                    sets.get(i),
                    day,
                    nextSeq(ledger, sets.get(i), day),
                    kind(),
                    gone,
                    takings == null ? Money.zero(book) : takings,
                    feesShares.get(i),
                    shippingShares.get(i),
                    taxShares.get(i),
                    minutesShares.get(i),
                    channel,
                    grade,
                    null,
                    null));
        }
        return exits;
    }

    static int nextSeq(Ledger ledger, UnitId unit, LocalDate day) {
        int last = 0;
        for (Entry entry : ledger.entriesOf(unit)) {
            if (entry.stands() && entry.fact() instanceof Exit e && e.on().equals(day)) {
                last = Math.max(last, e.seq());
            }
        }
        return last + 1;
    }

    private static List<@Nullable Money> shares(@Nullable Amount amount, Currency book, String option, int sets) {
        if (amount == null) {
            return Collections.nCopies(sets, null);
        }
        return new ArrayList<>(amount.in(book, option).allocate(ones(sets)));
    }

    private static List<@Nullable Quantity> shares(@Nullable Quantity whole, int sets) {
        if (whole == null) {
            return Collections.nCopies(sets, null);
        }
        List<@Nullable Quantity> shares = new ArrayList<>();
        for (long share : LargestRemainder.shares(whole.millionths(), ones(sets))) {
            shares.add(new Quantity(share));
        }
        return shares;
    }

    private static BigInteger[] ones(int n) {
        return Collections.nCopies(n, BigInteger.ONE).toArray(BigInteger[]::new);
    }
}
