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

/** Sets leave the shop. Several may go for one sum: every amount is then shared alike, by largest remainder. */
abstract class ExitCommand extends Recording {
    @Parameters(
            arity = "1..*",
            paramLabel = "UNIT",
            description = "The set's label, or enough of it to be the only one; several share every amount alike.")
    List<String> units = new ArrayList<>();

    @Option(names = "--on", paramLabel = "DATE", description = "The day (default: today).")
    @Nullable
    LocalDate on;

    abstract ExitKind kind();

    abstract @Nullable Amount gross();

    @Nullable
    Amount fees() {
        return null;
    }

    @Nullable
    Amount shipping() {
        return null;
    }

    @Nullable
    Amount tax() {
        return null;
    }

    @Nullable
    Quantity minutes() {
        return null;
    }

    @Nullable
    Boolean gone() {
        return null;
    }

    @Nullable
    String channel() {
        return null;
    }

    @Nullable
    Grade grade() {
        return null;
    }

    @Override
    List<Put> record(Session session, Ledger ledger) {
        return put(ledger, exits(session, ledger, UnitPick.units(ledger, units)));
    }

    final List<Exit> exits(Session session, Ledger ledger, List<UnitId> sets) {
        Currency book = session.shop().settings().currency();
        LocalDate day = on == null ? session.today() : on;
        int n = sets.size();
        List<@Nullable Money> gross = shares(gross(), book, "--gross", n);
        List<@Nullable Money> fees = shares(fees(), book, "--fees", n);
        List<@Nullable Money> shipping = shares(shipping(), book, "--shipping", n);
        List<@Nullable Money> tax = shares(tax(), book, "--tax", n);
        List<@Nullable Quantity> minutes = shares(minutes(), n);
        List<Exit> exits = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Money takings = gross.get(i);
            exits.add(new Exit(
                    sets.get(i),
                    day,
                    nextSeq(ledger, sets.get(i), day),
                    kind(),
                    gone(),
                    takings == null ? Money.zero(book) : takings,
                    fees.get(i),
                    shipping.get(i),
                    tax.get(i),
                    minutes.get(i),
                    channel(),
                    grade(),
                    null,
                    null));
        }
        return exits;
    }

    private static int nextSeq(Ledger ledger, UnitId unit, LocalDate day) {
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
