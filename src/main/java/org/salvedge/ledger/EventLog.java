package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import java.time.LocalDate;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Timeline;
import org.salvedge.shop.Timeline.Impossible;

/** The events of a package's sets, to be judged set by set when all files were read. */
final class EventLog {
    private static final ExitKind[] EXIT_KINDS = ExitKind.values();

    /** Events of one kind: of which set, on which day, a number and a second figure, two flags, in which row. */
    private static final class Events {
        private final IntArrayList unit = new IntArrayList();
        private final IntArrayList day = new IntArrayList();
        private final IntArrayList number = new IntArrayList();
        private final IntArrayList figure = new IntArrayList();
        private final IntArrayList row = new IntArrayList();
        private int[] start = new int[0];
        private int[] order = new int[0];

        void add(int ofUnit, int onDay, int itsNumber, int itsFigure, long inRow) {
            unit.add(ofUnit);
            day.add(onDay);
            number.add(itsNumber);
            figure.add(itsFigure);
            row.add((int) inRow);
        }

        void group(int largestUnit) {
            start = new int[largestUnit + 2];
            for (int i = 0; i < unit.size(); i++) {
                start[unit.getInt(i) + 1]++;
            }
            for (int u = 0; u <= largestUnit; u++) {
                start[u + 1] += start[u];
            }
            int[] next = start.clone();
            order = new int[unit.size()];
            for (int i = 0; i < order.length; i++) {
                order[next[unit.getInt(i)]++] = i;
            }
        }
    }

    private final Events attempts = new Events();
    private final IntArrayList attemptNumbers = new IntArrayList();
    private final Events exits = new Events();
    private final Events comebacks = new Events();

    /** @param passed 1, 0, or -1 for no retest */
    void attempt(int unit, int day, int second, int number, boolean fixed, int passed, long row) {
        attempts.add(unit, day, second, (passed + 1) << 1 | (fixed ? 1 : 0), row);
        attemptNumbers.add(number);
    }

    void exit(int unit, int day, int seq, ExitKind kind, boolean gone, long row) {
        exits.add(unit, day, seq, kind.ordinal() << 1 | (gone ? 1 : 0), row);
    }

    void comeback(int unit, int day, boolean restocked, long row) {
        comebacks.add(unit, day, 0, restocked ? 1 : 0, row);
    }

    /** What must be known of a set to judge its events. */
    interface Sets {
        /** Whether all of its rows could be read. */
        boolean judgeable(int unit);

        boolean arrived(int unit);

        /** Epoch day. */
        int firstDay(int unit);
    }

    /** Tells of each set the first event that cannot have happened, and events that stand twice. */
    void judge(int largestUnit, Sets sets, PackageFiles files, ProblemList problems) {
        attempts.group(largestUnit);
        exits.group(largestUnit);
        comebacks.group(largestUnit);
        Timeline timeline = new Timeline();
        for (int unit = 0; unit <= largestUnit; unit++) {
            int events = size(attempts, unit) + size(exits, unit) + size(comebacks, unit);
            if (events > 0 && sets.judgeable(unit)) {
                twice(exits, unit, Tables.EXITS, files, problems);
                twice(comebacks, unit, Tables.COMEBACKS, files, problems);
                walk(unit, sets, timeline, files, problems);
            }
        }
    }

    private static int size(Events events, int unit) {
        return events.start[unit + 1] - events.start[unit];
    }

    private void walk(int unit, Sets sets, Timeline timeline, PackageFiles files, ProblemList problems) {
        timeline.start(sets.arrived(unit), sets.firstDay(unit));
        for (int i = attempts.start[unit]; i < attempts.start[unit + 1]; i++) {
            int a = attempts.order[i];
            int figure = attempts.figure.getInt(a);
            timeline.attempt(
                    attempts.day.getInt(a),
                    attempts.number.getInt(a),
                    attemptNumbers.getInt(a),
                    (figure & 1) == 1,
                    (figure >> 1) - 1);
        }
        for (int i = exits.start[unit]; i < exits.start[unit + 1]; i++) {
            int e = exits.order[i];
            int figure = exits.figure.getInt(e);
            timeline.exit(exits.day.getInt(e), exits.number.getInt(e), EXIT_KINDS[figure >> 1], (figure & 1) == 1);
        }
        for (int i = comebacks.start[unit]; i < comebacks.start[unit + 1]; i++) {
            int c = comebacks.order[i];
            timeline.comeback(comebacks.day.getInt(c), comebacks.figure.getInt(c) == 1);
        }
        timeline.settle();
        Impossible impossible = timeline.impossible();
        if (impossible != null && timeline.impossibleKind() != null) {
            Events events;
            Table<?> table;
            switch (timeline.impossibleKind()) {
                case ATTEMPT -> {
                    events = attempts;
                    table = Tables.ATTEMPTS;
                }
                case EXIT -> {
                    events = exits;
                    table = Tables.EXITS;
                }
                default -> {
                    events = comebacks;
                    table = Tables.COMEBACKS;
                }
            }
            tell(
                    events,
                    events.order[events.start[unit] + timeline.impossibleIndex()],
                    table,
                    impossible,
                    files,
                    problems);
        }
    }

    private static void tell(
            Events events, int event, Table<?> table, Impossible impossible, PackageFiles files, ProblemList problems) {
        LocalDate day = LocalDate.ofEpochDay(events.day.getInt(event));
        boolean timed = table.equals(Tables.ATTEMPTS);
        problems.add(
                files.name(table),
                events.row.getInt(event),
                timed ? "started_at" : "on",
                timed ? Types.TIME.format(day.atStartOfDay().plusSeconds(events.number.getInt(event))) : day.toString(),
                impossible.words(),
                "Mend the day, or what comes before it.");
    }

    private static void twice(Events events, int unit, Table<?> table, PackageFiles files, ProblemList problems) {
        if (size(events, unit) < 2) {
            return;
        }
        Long2IntOpenHashMap rows = new Long2IntOpenHashMap();
        for (int i = events.start[unit]; i < events.start[unit + 1]; i++) {
            int e = events.order[i];
            long key = (long) events.day.getInt(e) << Integer.SIZE | events.number.getInt(e);
            int before = rows.putIfAbsent(key, events.row.getInt(e));
            if (before > 0) {
                problems.add(
                        files.name(table),
                        events.row.getInt(e),
                        "on",
                        LocalDate.ofEpochDay(events.day.getInt(e)).toString(),
                        "is there already for that set, in row " + before,
                        table.equals(Tables.EXITS)
                                ? "Give each exit of a set on one day its own seq."
                                : "Remove one of the two.");
            }
        }
    }
}
