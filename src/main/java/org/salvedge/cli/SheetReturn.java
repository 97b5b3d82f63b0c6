package org.salvedge.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.salvedge.cli.Recording.Put;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.BenchSheetReader;
import org.salvedge.report.BenchSheetReader.Filled;
import org.salvedge.report.Plural;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * A filled bench sheet read back: only what changed against what was known when it was written is put on record; what was
 * recorded meanwhile stays as it is.
 */
final class SheetReturn {
    private final Session session;
    private final Path file;
    private final LocalDateTime at;
    private final @Nullable String technician;
    private final List<Problem> problems = new ArrayList<>();
    private final List<String> conflicts = new ArrayList<>();

    SheetReturn(Session session, Path file, LocalDateTime at, @Nullable String technician) {
        this.session = session;
        this.file = file;
        this.at = at;
        this.technician = technician;
    }

    /** What one row asks to be put on record. */
    private record Wanted(
            Filled row,
            Entry set,
            @Nullable TvSet moved,
            @Nullable Attempt turn) {}

    int run() {
        List<Filled> rows = BenchSheetReader.read(file);
        List<Put> put;
        try (Ledger ledger = session.shop().open()) {
            put = ledger.together(() -> {
                List<Wanted> wanted = wanted(ledger, rows);
                if (!problems.isEmpty()) {
                    throw new Refused(file.getFileName() + ": nothing was recorded", problems);
                }
                return record(ledger, wanted);
            });
        }
        put.forEach(line -> session.say("entry " + line.entry() + ": " + line.words()));
        session.say((put.isEmpty() ? "Nothing new" : put.size() + (put.size() == 1 ? " entry" : " entries")) + " from "
                + Plural.of(rows.size(), "row") + " of " + file.getFileName() + ".");
        conflicts.forEach(c -> session.remark("left alone: " + c));
        return conflicts.isEmpty() ? Status.DONE : Status.PROBLEMS;
    }

    private List<Wanted> wanted(Ledger ledger, List<Filled> rows) {
        int number = ledger.nextAttempt();
        List<Wanted> wanted = new ArrayList<>();
        for (Filled row : rows) {
            Entry set = set(ledger, row);
            if (set == null) {
                continue;
            }
            List<Entry> entries = ledger.entriesOf(UnitPick.set(set).unit());
            TvSet moved = moved(row, entries, UnitPick.set(set));
            Attempt turn = row.hasTurn() ? turn(row, UnitPick.set(set).unit(), number) : null;
            if (turn != null && isNew(row, entries, turn)) {
                number++;
            } else {
                turn = null;
            }
            if (moved != null || turn != null) {
                wanted.add(new Wanted(row, set, moved, turn));
            }
        }
        return wanted;
    }

    private @Nullable Entry set(Ledger ledger, Filled row) {
        try {
            Entry found = ledger.unit(new UnitId(row.unit())).orElse(null);
            if (found == null) {
                problem(row, "unit", row.unit(), "is no set on record", "Leave the grey cells as they are");
            }
            return found;
        } catch (IllegalArgumentException e) {
            problem(row, "unit", row.unit(), "is no label", "Leave the grey cells as they are");
            return null;
        }
    }

    /** The set with its new place and wait; null where neither was changed on the sheet. */
    private @Nullable TvSet moved(Filled row, List<Entry> entries, TvSet now) {
        TvSet then = entries.stream()
                .filter(e -> e.number() <= row.asOfEntry() && e.fact() instanceof TvSet)
                .max(java.util.Comparator.comparingLong(Entry::number))
                .map(e -> (TvSet) Objects.requireNonNull(e.fact()))
                .orElse(now);
        boolean place = changed(row, "place", row.place(), then.place(), now.place());
        boolean waits = changed(row, "waits for", row.waitingFor(), then.waitingFor(), now.waitingFor());
        if (!place && !waits) {
            return null;
        }
        TvSet.Builder set = now.toBuilder();
        if (place) {
            set.place(row.place());
        }
        if (waits) {
            set.waitingFor(row.waitingFor());
            set.expectedOn(row.waitingFor() == null ? null : now.expectedOn());
        }
        return set.build();
    }

    private boolean changed(
            Filled row, String column, @Nullable String cell, @Nullable String then, @Nullable String now) {
        if (Objects.equals(cell, then) || Objects.equals(cell, now)) {
            return false;
        }
        if (!Objects.equals(then, now)) {
            conflicts.add("row " + row.row() + ", " + row.unit() + ", " + column + ": the sheet says " + quoted(cell)
                    + ", the record meanwhile " + quoted(now));
            return false;
        }
        return true;
    }

    private static String quoted(@Nullable String text) {
        return text == null ? "nothing" : '"' + text + '"';
    }

    /** Whether the turn is to be recorded: nothing of the set's bench work was recorded since the sheet was written. */
    private boolean isNew(Filled row, List<Entry> entries, Attempt turn) {
        List<Entry> since = entries.stream()
                .filter(e -> e.stands() && e.number() > row.asOfEntry())
                .filter(e -> e.fact() instanceof Attempt || e.fact() instanceof Exit || e.fact() instanceof Comeback)
                .toList();
        for (Entry e : since) {
            if (e.fact() instanceof Attempt a && a.sameTurn(turn)) {
                return false; // the sheet was read before
            }
        }
        for (Entry e : since) {
            Fact fact = Objects.requireNonNull(e.fact());
            conflicts.add("row " + row.row() + ", " + row.unit() + ": recorded meanwhile, entry " + e.number() + ": "
                    + EntryText.of(fact) + ". If the turn on the sheet is another one, record it with `attempt`");
        }
        return since.isEmpty();
    }

    private @Nullable Attempt turn(Filled row, UnitId unit, int number) {
        int before = problems.size();
        SheetCells cells = new SheetCells(session, row, this::problem);
        if (row.fault() == null) {
            problem(row, "fault", null, "is missing", "Write the fault found; unknown where it was not found out");
        }
        if (row.fix() == null) {
            problem(row, "fix", null, "is missing", "Write the fix used; none = diagnosed only");
        }
        var fault = row.fault() == null ? null : cells.fault(row.fault());
        var fix = row.fix() == null ? null : cells.fix(row.fix());
        var diagnosis = cells.number("diagnosis min", row.diagnosisMinutes());
        var minutes = cells.number("fix min", row.fixMinutes());
        var parts = cells.money("parts cost", row.partsCost());
        var passed = cells.yesNo("passed", row.passed());
        var soak = cells.number("soak h", row.soakHours());
        var grade = cells.grade(row.grade());
        var tested = cells.yesNo("safety tested", row.safetyTested());
        var reset = cells.yesNo("owner data reset", row.ownerDataReset());
        if (problems.size() > before || fault == null || fix == null) {
            return null;
        }
        try {
            return new Attempt(
                    number,
                    unit,
                    at,
                    technician,
                    fault,
                    fix,
                    diagnosis,
                    minutes,
                    parts,
                    passed,
                    soak,
                    null,
                    null,
                    grade,
                    tested,
                    reset,
                    row.note());
        } catch (IllegalArgumentException e) {
            problem(row, null, null, String.valueOf(e.getMessage()), "");
            return null;
        }
    }

    private void problem(Filled row, @Nullable String column, @Nullable String found, String what, String advice) {
        problems.add(new Problem(String.valueOf(file.getFileName()), "Bench", row.row(), column, found, what, advice));
    }

    private List<Put> record(Ledger ledger, List<Wanted> wanted) {
        List<Put> put = new ArrayList<>();
        for (Wanted w : wanted) {
            try {
                if (w.moved() != null) {
                    put.add(Recording.amend(ledger, w.set().number(), w.moved(), "bench sheet"));
                }
                if (w.turn() != null) {
                    if (w.turn().number() == 1) {
                        Cautions.say(session);
                    }
                    put.addAll(Recording.put(ledger, List.of(w.turn())));
                    BenchRelease.remind(session, ledger, w.turn());
                }
            } catch (Refused e) {
                throw new Refused(file.getFileName() + ", row " + w.row().row() + ", "
                        + w.row().unit() + ": " + e.getMessage() + "; nothing was recorded");
            }
        }
        return put;
    }
}
