package org.salvedge.cli;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Comeback;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A sold set comes back. */
@picocli.CommandLine.Command(
        description = "Record that a sold set came back, or that part of its price was refunded.",
        footer = {"", "Example: salvedge comeback L0042-007 --fault backlight --refund 189 --restocked"})
final class ComebackCommand extends Recording {
    @Parameters(paramLabel = "UNIT", description = "The set's label, or enough of it to be the only one.")
    String unit = "";

    @Option(names = "--fault", paramLabel = "CODE", description = "Fault class found.")
    @Nullable
    String fault;

    @Option(names = "--refund", paramLabel = "AMOUNT", description = "Paid back to the buyer.")
    @Nullable
    Amount refund;

    @Option(names = "--cost", paramLabel = "AMOUNT", description = "Transport and handling.")
    @Nullable
    Amount cost;

    @Option(
            names = "--restocked",
            description = "It is on the bench again; left out: the buyer keeps it, or it is written off.")
    boolean restocked;

    @Option(names = "--on", paramLabel = "DATE", description = "The day (default: today).")
    @Nullable
    LocalDate on;

    @Override
    List<Put> record(Session session, Ledger ledger) {
        Currency book = session.shop().settings().currency();
        return put(
                ledger,
                List.of(new Comeback(
                        UnitPick.unit(ledger, unit),
                        on == null ? session.today() : on,
                        fault == null ? null : CodePick.fault(session, "--fault", fault),
                        Amount.orNull(refund, book, "--refund"),
                        Amount.orNull(cost, book, "--cost"),
                        restocked)));
    }
}
