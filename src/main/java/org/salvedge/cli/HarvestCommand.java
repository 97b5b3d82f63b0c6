package org.salvedge.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.salvedge.cli.Recording.Put;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Table;
import org.salvedge.shop.Money;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.shop.Refused;
import org.salvedge.shop.UnitId;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Parts out of donors: labelled, kept in stock, used or sold. */
@picocli.CommandLine.Command(
        description = "Record a part taken out of a set, or that one has gone; without a set, list the parts in stock.",
        footer = {
            "",
            "A part gets a label of its own; `sheet P0001 --labels` prints it. Used in another set (`attempt --part P0001`, at the",
            "bench +p0001), its value is takings of its donor and parts cost of that turn, so that the shop's total is not changed",
            "by moving a board. Sold by itself: --gone P0001 --gross 15. Example:",
            "salvedge harvest L0042-003 --kind main_board --number MB-7710 --value 12 --tested good"
        })
final class HarvestCommand extends Command {
    @Parameters(arity = "0..1", paramLabel = "UNIT", description = "The donor: its label, or enough of it.")
    @Nullable
    String unit;

    @Option(
            names = "--kind",
            paramLabel =
                    "power_board|main_board|timing_board|led_strips|led_driver|panel|film|stand|remote|speakers|other",
            description = "Kind of part.")
    @Nullable
    PartKind kind;

    @Option(names = "--value", paramLabel = "AMOUNT", description = "Transfer price: what it would bring by itself.")
    @Nullable
    Amount value;

    @Option(names = "--number", paramLabel = "TEXT", description = "Number printed on the part.")
    @Nullable
    String number;

    @Option(names = "--tested", paramLabel = "good|bad|untested", description = "What a test of it said.")
    @Nullable
    PartTest tested;

    @Option(names = "--part", paramLabel = "LABEL", description = "Its label (default: the next of P0001, P0002, ...).")
    @Nullable
    String part;

    @Option(names = "--gone", paramLabel = "LABEL", description = "A part in stock was sold or thrown away.")
    @Nullable
    String gone;

    @Option(names = "--gross", paramLabel = "AMOUNT", description = "With --gone: takings, which are its donor's.")
    @Nullable
    Amount gross;

    @Option(names = "--on", paramLabel = "DATE", description = "The day (default: today).")
    @Nullable
    LocalDate on;

    @Option(
            names = "--format",
            paramLabel = "table|csv|json",
            description = "Of the list: table (default), csv or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if (unit == null && gone == null) {
            if (kind != null || value != null || part != null) {
                throw new Usage("missing: UNIT, the set the part came out of");
            }
            list(session);
            return Status.DONE;
        }
        if (unit != null && gone != null) {
            throw new Usage("--gone: names a part in stock; leave UNIT out");
        }
        if (gross != null && gone == null) {
            throw new Usage("--gross: goes with --gone; a part that is taken out has a --value");
        }
        List<Put> put;
        try (Ledger ledger = session.shop().open()) {
            LocalDate day = on == null ? session.today() : on;
            put = ledger.act(() -> {
                try {
                    return gone == null ? taken(session, ledger, day) : left(session, ledger, gone, day);
                } catch (IllegalArgumentException e) {
                    throw new Refused(String.valueOf(e.getMessage()));
                }
            });
        }
        put.forEach(line -> session.say("entry " + line.entry() + ": " + line.words()));
        return Status.DONE;
    }

    private List<Put> taken(Session session, Ledger ledger, LocalDate day) {
        if (kind == null || value == null) {
            throw new Usage("missing: " + (kind == null ? "--kind KIND" : "--value AMOUNT"));
        }
        UnitId donor = UnitPick.unit(ledger, java.util.Objects.requireNonNull(unit));
        return Recording.put(
                ledger,
                List.of(new Part(
                        part == null ? nextLabel(ledger) : part,
                        donor,
                        kind,
                        number,
                        day,
                        value.in(session.shop().settings().currency(), "--value"),
                        tested,
                        null,
                        null)));
    }

    private static String nextLabel(Ledger ledger) {
        int last = 0;
        for (Part p : ledger.all(Part.class)) {
            if (p.part().matches("P[0-9]{4,8}")) {
                last = Math.max(last, Integer.parseInt(p.part().substring(1)));
            }
        }
        return String.format(Locale.ROOT, "P%04d", last + 1);
    }

    private List<Put> left(Session session, Ledger ledger, String label, LocalDate day) {
        Entry entry = PartUse.inStock(ledger, label);
        Part p = PartUse.part(entry);
        Part changed =
                new Part(p.part(), p.fromUnit(), p.kind(), p.number(), p.on(), p.value(), p.tested(), p.attempt(), day);
        List<Put> put = new java.util.ArrayList<>();
        put.add(Recording.amend(ledger, entry.number(), changed, gross == null ? "thrown away" : "sold"));
        Money takings = Amount.orNull(gross, session.shop().settings().currency(), "--gross");
        UnitId donor = p.fromUnit();
        if (takings != null) {
            if (donor == null) {
                throw new Refused(
                        p.part() + " was bought, not taken out of a set: there is no donor whose takings these are");
            }
            put.addAll(Recording.put(ledger, List.of(PartUse.takings(ledger, donor, day, takings))));
        }
        return put;
    }

    private void list(Session session) {
        List<Part> parts;
        try (Ledger ledger = session.shop().read()) {
            parts = ledger.all(Part.class).stream()
                    .filter(p -> p.attempt() == null && p.goneOn() == null)
                    .toList();
        }
        if (parts.isEmpty() && format == Format.TABLE) {
            session.say("No part in stock.");
            return;
        }
        Table.Builder table = Table.of(
                Column.of("part", "part", Kind.KEY),
                Column.of("kind", "kind", Kind.TEXT),
                Column.of("number", "number", Kind.TEXT),
                Column.of("from_unit", "out of", Kind.KEY),
                Column.of("on", "on", Kind.DATE),
                Column.of("value", "value", Kind.MONEY),
                Column.of("tested", "tested", Kind.TEXT));
        parts.forEach(p -> table.row(p.part(), p.kind(), p.number(), p.fromUnit(), p.on(), p.value(), p.tested()));
        session.print(table.build(), format);
    }
}
