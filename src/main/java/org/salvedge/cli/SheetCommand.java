package org.salvedge.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The bench on paper or in a spreadsheet. */
@picocli.CommandLine.Command(
        description = "Write a bench sheet (XLSX) or label sheets, and read a filled bench sheet back.",
        footer = {
            "",
            "Without UNIT or LOT: every set on the bench, in the order of `queue`. One row is one turn at the bench; print it and",
            "write by hand, or fill it in a spreadsheet program. --return records what was filled in, whole or not at all; where",
            "something about a set was recorded after the sheet was written, that row is listed and left alone (status 1).",
            "Example: salvedge sheet --hours 6",
            "Labels: salvedge sheet L0042 --labels. Read back: salvedge sheet --return reports/bench.xlsx"
        })
final class SheetCommand extends Command {
    @Parameters(arity = "0..*", paramLabel = "UNIT|LOT", description = "Only these sets, or the sets of these lots.")
    List<String> names = new ArrayList<>();

    @Option(names = "--labels", description = "Label sheets instead: each label as text, QR code and Code 128.")
    boolean labels;

    @Option(names = "--hours", paramLabel = "H", description = "Only the sets that fill so many hours of the queue.")
    @Nullable
    Double hours;

    @Option(names = "--out", paramLabel = "FILE", description = "Where to write (default: a new file in reports/).")
    @Nullable
    Path out;

    @Option(names = "--return", paramLabel = "FILE", description = "A filled bench sheet to read back.")
    @Nullable
    Path back;

    @Option(names = "--at", paramLabel = "DATETIME", description = "With --return: when the turns were (default: now).")
    @Nullable
    LocalDateTime at;

    @Option(
            names = "--technician",
            paramLabel = "NAME",
            description = "With --return: who filled it in (default: SALVEDGE_TECHNICIAN, where it is set).")
    @Nullable
    String technician;

    @Override
    int run(Session session) {
        if (back != null) {
            if (labels || out != null || hours != null || !names.isEmpty()) {
                throw new Usage("--return: goes with --at and --technician only");
            }
            String by =
                    technician == null ? session.surroundings().environment().get("SALVEDGE_TECHNICIAN") : technician;
            return new SheetReturn(
                            session,
                            session.file(back),
                            at == null ? session.now() : at,
                            by == null || by.isBlank() ? null : by.strip())
                    .run();
        }
        if (at != null || technician != null) {
            throw new Usage("--at and --technician go with --return FILE");
        }
        if (hours != null && (labels || !names.isEmpty() || !(hours > 0 && hours <= 1000))) {
            throw new Usage("--hours: a number above 0, and neither with --labels nor with sets by name");
        }
        SheetFiles files = new SheetFiles(session);
        Path written = labels ? files.labels(names, out) : files.bench(names, hours == null ? 0 : hours, out);
        session.say("Written to " + written);
        return Status.DONE;
    }
}
