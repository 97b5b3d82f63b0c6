package org.salvedge.cli;

import java.nio.file.Path;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Digits;
import picocli.CommandLine.Parameters;

/** Moving out: writes a history package. */
@picocli.CommandLine.Command(
        description = "Write everything that stands as a history package, for other programs or another shop.",
        footer = {
            "",
            "The folder is new, empty, or holds an earlier export, which is replaced.",
            "",
            "Example: salvedge export history"
        })
final class ExportCommand extends Command {
    @Parameters(paramLabel = "DIR", description = "The folder to write.")
    Path folder = Path.of("");

    @Override
    int run(Session session) {
        Path target = session.file(folder);
        try (Ledger ledger = session.shop().read();
                ProgressLine progress = new ProgressLine(session.surroundings())) {
            long rows = ledger.exportPackage(target, progress);
            session.say("Exported " + Digits.grouped(rows) + " rows to " + target);
        }
        return Status.DONE;
    }
}
