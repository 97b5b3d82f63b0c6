package org.salvedge.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchQueue;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.BenchSheet;
import org.salvedge.report.LabelSheet;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Grade;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Part;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;
import org.salvedge.worth.turn.OpenBench;
import org.salvedge.worth.turn.Prospect;

/** Bench sheets and label sheets of sets on record. A file that is there is never written over: it may be filled in. */
final class SheetFiles {
    private final Session session;

    SheetFiles(Session session) {
        this.session = session;
    }

    /** @param hours only the sets that fill so many; 0 = all */
    Path bench(List<String> names, double hours, @Nullable Path out) {
        List<BenchSheet.Row> rows = new ArrayList<>();
        try (Ledger ledger = session.shop().read()) {
            boolean whole = names.isEmpty();
            BenchPlan plan = whole || ledger.nextAttempt() <= BenchPlan.QUICKLY_READ
                    ? BenchPlan.of(session, ledger, null, hours)
                    : null;
            List<UnitId> units = whole && plan != null ? onBench(plan, hours) : named(ledger, names);
            for (UnitId unit : units) {
                OpenBench open = plan == null ? null : plan.open(unit.value());
                Prospect ahead = plan == null || open == null ? null : plan.prospect(open.what());
                rows.add(row(ledger, unit, ahead));
            }
        }
        if (rows.isEmpty()) {
            throw new Refused("no set is on the bench; a sheet is for sets that are");
        }
        return write(rows, free(out, "bench-" + named(names)));
    }

    private String named(List<String> names) {
        return names.size() == 1 ? KeptFile.safe(names.get(0)) : session.today().toString();
    }

    private Path write(List<BenchSheet.Row> rows, Path to) {
        Codes codes = session.shop().settings().codes();
        BenchSheet.Choices choices = new BenchSheet.Choices(
                codes.faults().keySet().stream().map(f -> f.code()).toList(),
                codes.fixes().keySet().stream().map(f -> f.code()).toList(),
                java.util.Arrays.stream(Grade.values()).map(Grade::name).toList());
        Reports.write(
                to,
                () -> BenchSheet.write(
                        to,
                        "Bench sheet",
                        session.today(),
                        rows,
                        choices,
                        session.shop().settings().pageSize()));
        return to;
    }

    private static BenchSheet.Row row(Ledger ledger, UnitId unit, @Nullable Prospect ahead) {
        List<Entry> entries = ledger.entriesOf(unit);
        TvSet set = UnitPick.set(UnitPick.entry(ledger, unit));
        String size = set.inches() == null ? "" : ", " + set.inches() + " in";
        return new BenchSheet.Row(
                unit.value(),
                set.maker() + " " + set.model() + size,
                set.claimed().code(),
                known(SetNotes.known(set, entries), ahead),
                ahead == null ? null : ahead.stopAt(),
                entries.stream().mapToLong(Entry::number).max().orElse(0),
                set.place(),
                set.waitingFor());
    }

    private static String known(String known, @Nullable Prospect ahead) {
        if (ahead == null || ahead.chance() == 1) {
            return known;
        }
        String likely = String.format(Locale.ROOT, "%.2f %s", ahead.chance(), ahead.likely());
        return known.isEmpty() ? likely : known + "; " + likely;
    }

    /** Sets on the bench in the order of the queue; without hours to fill, then those that wait or are not worth a turn. */
    private static List<UnitId> onBench(BenchPlan plan, double hours) {
        List<UnitId> units = new ArrayList<>();
        for (BenchQueue.Place place : plan.order(hours)) {
            if (hours == 0 || place.within()) {
                units.add(new UnitId(place.candidate().unit()));
            }
        }
        if (hours == 0) {
            plan.waiting().forEach(s -> units.add(s.unit()));
            plan.notWorthTaking().forEach(o -> units.add(new UnitId(o.unit())));
        }
        return units;
    }

    Path labels(List<String> names, @Nullable Path out) {
        List<LabelSheet.Label> labels = new ArrayList<>();
        try (Ledger ledger = session.shop().read()) {
            if (!names.isEmpty() && names.stream().allMatch(n -> ledger.part(n).isPresent())) {
                for (String name : names) {
                    Part p = PartUse.part(ledger.part(name).orElseThrow());
                    labels.add(new LabelSheet.Label(
                            p.part(),
                            p.kind().code() + (p.number() == null ? "" : " " + p.number()),
                            p.fromUnit() == null ? "bought" : "out of " + p.fromUnit()));
                }
                return writeLabels(labels, names, out);
            }
            List<UnitId> units =
                    names.isEmpty() ? onBench(BenchPlan.of(session, ledger, null, 0), 0) : named(ledger, names);
            for (UnitId unit : units) {
                TvSet set = UnitPick.set(UnitPick.entry(ledger, unit));
                if (set.arrived()) {
                    labels.add(new LabelSheet.Label(
                            unit.value(),
                            set.maker() + " " + set.model(),
                            (set.inches() == null ? "" : set.inches() + " in, ")
                                    + set.claimed().code()));
                }
            }
        }
        return writeLabels(labels, names, out);
    }

    private Path writeLabels(List<LabelSheet.Label> labels, List<String> names, @Nullable Path out) {
        if (labels.isEmpty()) {
            throw new Refused("no set to label: name a lot or sets that arrived");
        }
        Path to = free(out, "labels-" + named(names));
        Reports.write(
                to, () -> LabelSheet.write(to, labels, session.shop().settings().pageSize()));
        return to;
    }

    /** The sets named, each once, in the order named; a lot stands for its sets. */
    private static List<UnitId> named(Ledger ledger, List<String> names) {
        Map<UnitId, Boolean> units = new LinkedHashMap<>();
        for (String name : names) {
            LotId lot = lot(name);
            if (lot != null && ledger.lot(lot).isPresent()) {
                ledger.setsOf(lot).stream().filter(TvSet::arrived).forEach(s -> units.put(s.unit(), true));
            } else {
                units.put(UnitPick.unit(ledger, name), true);
            }
        }
        return List.copyOf(units.keySet());
    }

    private static @Nullable LotId lot(String name) {
        try {
            return new LotId(name);
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    /** The file named, which must not be there, or a new one in the reports folder. */
    private Path free(@Nullable Path named, String name) {
        if (named != null) {
            Path file = session.file(named);
            if (Files.exists(file)) {
                throw new Refused(file + " is there already, perhaps filled in; name another file or move it away");
            }
            return file;
        }
        Path file = session.shop().reports().resolve(name + ".xlsx");
        for (int i = 2; Files.exists(file); i++) {
            file = session.shop().reports().resolve(name + "-" + i + ".xlsx");
        }
        return file;
    }
}
