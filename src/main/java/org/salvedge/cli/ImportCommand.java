package org.salvedge.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Imported;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.PackageSettings;
import org.salvedge.report.Plural;
import org.salvedge.shop.Settings;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Moving in: takes a history package. */
@picocli.CommandLine.Command(
        description = "Take a history package (datapackage.json and its CSV files), whole or not at all.",
        footer = {
            "",
            "Each bad row is named with file, row, column, the text found and what to do.",
            "",
            "Example: salvedge import history"
        })
final class ImportCommand extends Command {
    @Parameters(paramLabel = "DIR", description = "The folder that holds datapackage.json.")
    Path folder = Path.of("");

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        Path source = session.file(folder);
        Imported imported = Stopped.during(
                session.surroundings(),
                "stopped. An import is taken whole or not at all: import again, and it says if it was already taken",
                () -> take(session, source));
        if (format == Format.JSON) {
            session.json(java.util.Map.of(
                    "rows", imported.rows(),
                    "lots", imported.lots(),
                    "sets", imported.sets(),
                    "attempts", imported.attempts(),
                    "exits", imported.exits(),
                    "comebacks", imported.comebacks()));
        } else {
            session.say(words(imported));
        }
        differences(Ledger.packageSettings(source), session.shop().settings()).forEach(session::remark);
        return Status.DONE;
    }

    private static Imported take(Session session, Path source) {
        try (Ledger ledger = session.shop().open();
                ProgressLine progress = new ProgressLine(session.surroundings())) {
            return ledger.importPackage(source, progress);
        }
    }

    private static String words(Imported imported) {
        List<String> parts = new ArrayList<>();
        count(parts, imported.lots(), "lot");
        count(parts, imported.sets(), "set");
        count(parts, imported.attempts(), "attempt");
        count(parts, imported.exits(), "exit");
        count(parts, imported.comebacks(), "comeback");
        count(parts, imported.parts(), "part");
        count(parts, imported.recipes(), "recipe");
        count(parts, imported.bids(), "bid");
        count(parts, imported.offers(), "offer");
        return "Imported " + (parts.isEmpty() ? "nothing: the package has no rows" : String.join(", ", parts));
    }

    private static void count(List<String> parts, long n, String what) {
        if (n > 0) {
            parts.add(Plural.of(n, what));
        }
    }

    /** Settings that figures rest on travel with a package; this shop's stay in force. */
    private static List<String> differences(PackageSettings there, Settings here) {
        List<String> lines = new ArrayList<>();
        differs(
                lines,
                "labour_rate",
                there.labourRate() == null
                        ? null
                        : there.labourRate().stripTrailingZeros().toPlainString(),
                here.labourRate().stripTrailingZeros().toPlainString());
        if (there.zone() != null && !there.zone().getRules().equals(here.zone().getRules())) {
            differs(lines, "zone", there.zone().getId(), here.zone().getId());
        }
        differs(
                lines,
                "basis",
                there.basis() == null ? null : there.basis().code(),
                here.basis().code());
        return lines;
    }

    private static void differs(List<String> lines, String setting, @Nullable String there, String here) {
        if (there != null && !there.equals(here)) {
            lines.add("note: the package was kept with " + setting + " " + there + "; this shop's is " + here
                    + " (shop.toml), which counts from now on");
        }
    }
}
