package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import picocli.CommandLine.Option;

/** A turn at the bench in one line, for a scanner that types. */
@picocli.CommandLine.Command(
        description = "Record at the bench, one line a turn: scan a label, type fault, fix and result.",
        footer = {
            "",
            "Scan or type a label: the set is in hand and its watch runs. Then FAULT FIX RESULT, each by its number or first",
            "letters, and what else there is: a grade (a, b, c), s safety tested, o owner data reset, p21.50 parts, +p0001 stock, h8 soak",
            "hours, 45m or 8+45m minutes instead of the watch's, \"a note\". A dot takes the fix proposed. The fault alone",
            "first: the watch goes over from diagnosis to fix. Result: y, n, - (no retest). What is printed is on disk.",
            "",
            "  L0042-007          (scanned)",
            "  row                fault found: row_drive",
            "  . y b so           contact_mask, passed, grade B, safety tested, owner data reset",
            "",
            "u takes the latest turn back, p stops the watch, n names the next set, ? lists the codes, q ends. Without a terminal, lines are read from",
            "standard input. Example: salvedge bench --technician Ada"
        })
final class BenchCommand extends Command {
    @Option(
            names = "--technician",
            paramLabel = "NAME",
            description = "Who is at the bench (default: SALVEDGE_TECHNICIAN, where it is set).")
    @Nullable
    String technician;

    @Override
    int run(Session session) {
        String by = technician == null ? session.surroundings().environment().get("SALVEDGE_TECHNICIAN") : technician;
        try (Ledger ledger = session.shop().open()) {
            return new BenchTalk(session, ledger, by == null || by.isBlank() ? null : by.strip()).run();
        }
    }
}
