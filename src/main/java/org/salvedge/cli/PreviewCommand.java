package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.ListedSet;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.ManifestReader;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.MarkedCopy;
import org.salvedge.report.Plural;
import org.salvedge.report.Table;
import org.salvedge.shop.Refused;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A manifest arrives by mail: how the program understands it. */
@picocli.CommandLine.Command(
        description =
                "Show how a seller's list is understood: columns, sets, problems. Changes nothing, needs no shop.",
        footer = {
            "",
            "A heading or a remark that is not understood: --explain shows why, and lines to put into shop.toml that hold from then on.",
            "",
            "Example: salvedge preview inbox/harbour-0312.xlsx --marked harbour-marked.xlsx"
        })
final class PreviewCommand extends Command {
    /** Lines of a table that somebody may still look through. */
    private static final int MOST_SHOWN = 5_000;

    @Parameters(
            paramLabel = "FILE",
            description = "The seller's list: XLSX, XLS, ODS, CSV, or what is sent under such a name.")
    Path file = Path.of("");

    @Option(
            names = "--password",
            paramLabel = "TEXT",
            description = "For a protected workbook; at a terminal it is asked for.")
    @Nullable
    String password;

    @Option(names = "--explain", description = "Show what each column and each remark was taken for, and how sure.")
    boolean explain;

    @Option(
            names = "--marked",
            paramLabel = "FILE.xlsx",
            description = "Write a copy of the seller's sheets with the problems marked and told beside the row.")
    @Nullable
    Path marked;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if (explain && format == Format.CSV) {
            throw new Usage("--explain: prints table or json");
        }
        Path target = target(session);
        SellersList list = new SellersList(session);
        Manifest manifest = target == null ? list.read(file, password).manifest() : marked(session, list, target);
        Explanation why = explain ? new Explanation(manifest, list.reader().words(manifest)) : null;
        if (format == Format.JSON) {
            Map<String, @Nullable Object> json = json(manifest);
            if (why != null) {
                why.addTo(json);
            }
            session.json(json);
        } else {
            if (format == Format.TABLE) {
                head(session, manifest);
            }
            session.print(table(manifest, format), format);
            if (why != null) {
                why.print(session);
            }
            Problems.tell(session, manifest.problems());
        }
        return manifest.problems().isEmpty() ? Status.DONE : Status.PROBLEMS;
    }

    /** Where the marked copy goes, or null; never over a file that is there. */
    private @Nullable Path target(Session session) {
        if (marked == null) {
            return null;
        }
        Path target = session.file(marked);
        if (!target.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            throw new Usage("--marked: \"" + marked + "\" must end in .xlsx");
        }
        if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            throw new Refused("--marked: " + marked + " is there already. Name another file, or move it away");
        }
        return target;
    }

    private Manifest marked(Session session, SellersList list, Path target) {
        ManifestReader.WithSheets read = list.read(file, password);
        try {
            MarkedCopy.write(read.manifest(), read.sheets(), target);
        } catch (IOException e) {
            throw new UncheckedIOException(target + ": the marked copy could not be written: " + e.getMessage(), e);
        }
        session.remark("The marked copy is " + marked);
        return read.manifest();
    }

    private static void head(Session session, Manifest manifest) {
        session.say(Plural.of(manifest.sets().size(), "set") + ", "
                + Plural.of(manifest.problems().size(), "problem") + ", read from "
                + SellersList.place(manifest)
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
        int shown = 0;
        for (int i = 0; i < sets.size(); ) {
            if (format == Format.TABLE && shown++ == MOST_SHOWN) {
                table.note(
                        "... and " + Plural.of(sets.size() - i, "set") + " more; --format csv and json have them all");
                break;
            }
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
        Iterable<Map<String, @Nullable Object>> sets = () ->
                manifest.sets().stream().map(PreviewCommand::json).iterator(); // made one by one as they are written
        json.put("sets", sets);
        json.put("problems", Problems.json(manifest.problems()));
        return json;
    }

    private static Map<String, @Nullable Object> json(ListedSet s) {
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
        return set;
    }
}
