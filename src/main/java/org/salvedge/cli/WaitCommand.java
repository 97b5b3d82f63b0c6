package org.salvedge.cli;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.TvSet;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a set waits for. */
@picocli.CommandLine.Command(
        description = "Record which part a set waits for and when it is due, or that it waits no longer.",
        footer = {"", "Example: salvedge wait L0042-007 \"led strips\" --expected-on 2026-03-20"})
final class WaitCommand extends Recording {
    @Parameters(index = "0", paramLabel = "UNIT", description = "The set's label, or enough of it to be the only one.")
    String unit = "";

    @Parameters(
            arity = "0..1",
            index = "1",
            paramLabel = "PART",
            description = "The part it waits for; or --waiting-for.")
    @Nullable
    String part;

    @Option(
            names = "--waiting-for",
            paramLabel = "PART",
            description = "The part it waits for; \"\" = it waits no longer.")
    @Nullable
    String waitingFor;

    @Option(names = "--expected-on", paramLabel = "DATE", description = "When that part is due.")
    @Nullable
    LocalDate expectedOn;

    @Override
    List<Put> record(Session session, Ledger ledger) {
        String awaited = waitingFor == null ? part : waitingFor;
        if (awaited == null) {
            throw new Usage("missing: --waiting-for PART, or --waiting-for \"\" where it waits no longer");
        }
        boolean over = awaited.isBlank();
        if (over && expectedOn != null) {
            throw new Usage("--expected-on: a set that waits for nothing expects nothing");
        }
        Entry entry = UnitPick.entry(ledger, UnitPick.unit(ledger, unit));
        TvSet changed = UnitPick.set(entry).toBuilder()
                .waitingFor(over ? null : awaited.strip())
                .expectedOn(expectedOn)
                .build();
        long number = ledger.amend(entry.number(), changed, over ? "waits no longer" : "waits for a part");
        return List.of(new Put(
                number,
                changed.unit()
                        + (over ? " waits no longer" : " waits for " + awaited.strip())
                        + (expectedOn == null ? "" : ", expected on " + expectedOn)));
    }
}
