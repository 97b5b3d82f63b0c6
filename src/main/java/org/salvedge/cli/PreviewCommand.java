package org.salvedge.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.ListedSet;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.ManifestReader;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Table;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A manifest arrives by mail: how the program understands it. */
@picocli.CommandLine.Command(
        description =
                "Show how a seller's list is understood: columns, sets, problems. Changes nothing, needs no shop.")
final class PreviewCommand extends Command {
    @Parameters(
            paramLabel = "FILE",
            description = "The seller's list: XLSX, XLS, CSV, or what is sent under such a name.")
    Path file = Path.of("");

    @Option(names = "--password", paramLabel = "TEXT", description = "For a protected workbook.")
    @Nullable
    String password;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        Manifest manifest = new ManifestReader(session.shop().settings()).read(session.file(file), password);
        if (format == Format.JSON) {
            session.json(json(manifest));
        } else {
            if (format == Format.TABLE) {
                head(session, manifest);
            }
            session.print(table(manifest, format), format);
            Problems.tell(session, manifest.problems());
        }
        return manifest.problems().isEmpty() ? Status.DONE : Status.PROBLEMS;
    }

    private static void head(Session session, Manifest manifest) {
        session.say(manifest.sets().size() + " sets, " + manifest.problems().size() + " problems, read from "
                + (manifest.sheet().isEmpty() ? "" : "sheet \"" + manifest.sheet() + "\" of ") + manifest.file()
                + ", header in row " + manifest.headerRow());
        manifest.columns().forEach((field, heading) -> session.say("  " + field + ": \"" + heading + "\""));
    }

    private static Table table(Manifest manifest, Format format) {
        Table.Builder table = Table.of(
                Column.of("sheet", "sheet", Kind.TEXT).asDroppable(),
                Column.of("line", "line", Kind.COUNT),
                Column.of("sets", "sets", Kind.COUNT),
                Column.of("maker", "maker", Kind.TEXT),
                Column.of("model", "model", Kind.TEXT),
                Column.of("inches", "in", Kind.NUMBER),
                Column.of("claimed", "claimed", Kind.TEXT),
                Column.of("claimed_text", "in the seller's words", Kind.TEXT),
                Column.of("asking", "asking", Kind.NUMBER),
                Column.of("serial", "serial", Kind.TEXT).asDroppable());
        List<ListedSet> sets = manifest.sets();
        for (int i = 0; i < sets.size(); ) {
            ListedSet s = sets.get(i);
            int n = 1;
            while (format == Format.TABLE
                    && i + n < sets.size()
                    && sets.get(i + n).equals(s)) {
                n++;
            }
            table.row(
                    s.sheet(),
                    s.line(),
                    n,
                    s.maker(),
                    s.model(),
                    s.inches(),
                    s.claimed(),
                    s.claimedText(),
                    s.asking(),
                    s.serial());
            i += n;
        }
        return table.build();
    }

    static Map<String, @Nullable Object> json(Manifest manifest) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("file", manifest.file());
        json.put("sheet", manifest.sheet());
        json.put("header_row", manifest.headerRow());
        json.put("columns", manifest.columns());
        List<Map<String, @Nullable Object>> sets = new ArrayList<>();
        for (ListedSet s : manifest.sets()) {
            Map<String, @Nullable Object> set = new LinkedHashMap<>();
            set.put("sheet", s.sheet());
            set.put("line", s.line());
            set.put("maker", s.maker());
            set.put("model", s.model());
            set.put("inches", s.inches());
            set.put("serial", s.serial());
            set.put("claimed", s.claimed().code());
            set.put("claimed_text", s.claimedText());
            set.put("claimed_sureness", s.claimSureness());
            set.put("asking", s.asking());
            sets.add(set);
        }
        json.put("sets", sets);
        json.put("problems", Problems.json(manifest.problems()));
        return json;
    }
}
