package org.salvedge.cli;

import java.util.List;
import org.salvedge.ledger.Finding;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Table;
import picocli.CommandLine.Option;

/** Any time: the ledger against its own rules. */
@picocli.CommandLine.Command(
        description =
                "Check the ledger against its own rules: checksums, sums, shares, orphan rows, impossible histories.",
        footer = {"", "Exit status 0 only where every rule holds, else 1.", "", "Example: salvedge audit"})
final class AuditCommand extends Command {
    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        List<Finding> findings;
        try (Ledger ledger = session.shop().read();
                ProgressLine progress = new ProgressLine(session.surroundings())) {
            findings = ledger.audit(progress);
        }
        if (findings.isEmpty() && format == Format.TABLE) {
            session.say("Every rule holds.");
            return Status.DONE;
        }
        Table.Builder table = Table.of(
                Column.of("rule", "rule", Kind.TEXT),
                Column.of("where", "where", Kind.TEXT),
                Column.of("what", "what is wrong", Kind.TEXT));
        findings.forEach(f -> table.row(f.rule(), f.where(), f.what()));
        if (format == Format.TABLE) {
            findings.forEach(f -> session.say(f.rule() + ": " + f.where() + ": " + f.what()));
            session.say(findings.size() + (findings.size() == 1 ? " finding" : " findings")
                    + ". Nothing was changed; what a wrong entry says is mended by `amend`, a damaged file by a copy.");
        } else {
            session.print(table.build(), format);
        }
        return findings.isEmpty() ? Status.DONE : Status.PROBLEMS;
    }
}
