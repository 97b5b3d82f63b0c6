package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchQueue.Place;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Plural;
import org.salvedge.report.Screen;
import org.salvedge.report.Table;
import org.salvedge.shop.TvSet;
import org.salvedge.worth.Route;
import org.salvedge.worth.turn.OpenBench;
import org.salvedge.worth.turn.Stop;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Each morning: which set to take next. */
@picocli.CommandLine.Command(
        description = "Which set to take next, why, and when to stop: by expected gain a bench minute.",
        footer = {
            "",
            "gain: what the turn is expected to bring over stripping the set at once, less parts and labour. min: bench minutes",
            "expected, diagnosis included. stop at: minutes from taking it in hand after which to give up while the fault is not",
            "known, and between which eight in ten of the answers lie that the record leaves possible; JSON has both by fault",
            "found (0 = strip). Sets that wait for a part are skipped. Where there is more work than time (--hours a working day,",
            "else as up to the last turn on record), a minute counts at what the work left undone would bring.",
            "Example: salvedge queue --hours 6"
        })
final class QueueCommand extends Command {
    private static final int SHOWN = 20;
    private static final int LEFT_OUT = 3;
    /** Share of the work that is done once every set is weighed. */
    private static final double PLANNED = 0.8;

    private static final int WAITING_SHOWN = 5;

    @Option(names = "--hours", paramLabel = "H", description = "Fill a day of so many bench hours.")
    @Nullable
    Double hours;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description = "Only what had happened and had been recorded by that day's end.")
    @Nullable
    LocalDate asOf;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Mixin
    Overrides overrides = new Overrides();

    @Override
    int run(Session session) {
        if (hours != null && !(hours > 0 && hours <= 1000)) {
            throw new Usage("--hours: \"" + hours + "\" is not a number of hours above 0");
        }
        overrides.apply(session);
        double day = hours == null ? 0 : hours;
        try (Ledger ledger = session.shop().read();
                ProgressLine progress = new ProgressLine(session.surroundings())) {
            BenchPlan plan = BenchPlan.of(session, ledger, asOf, day, progress);
            progress.step("putting them in order", PLANNED);
            List<Place> order = plan.order(day);
            QueueNotes notes = new QueueNotes(session, ledger, plan, asOf);
            progress.clear();
            if (format == Format.JSON) {
                session.json(json(plan, order, notes));
            } else if (format == Format.CSV) {
                session.print(table(plan, order, order.size(), notes, false), format);
            } else {
                print(session, plan, order, notes);
            }
        }
        return Status.DONE;
    }

    private Map<String, @Nullable Object> json(BenchPlan plan, List<Place> order, QueueNotes notes) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("hours", hours);
        json.put("minute_beyond_labour", plan.shadow());
        List<Map<String, @Nullable Object>> rows = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            Place p = order.get(i);
            var prospect = p.candidate().prospect();
            QueueNotes.Note note = notes.of(order, i);
            OpenBench open = plan.mustBeOpen(p.candidate().unit());
            Map<String, @Nullable Object> row = new LinkedHashMap<>();
            row.put("unit", p.candidate().unit());
            row.put("likely", prospect.likely());
            row.put("gain", prospect.gain());
            row.put("minutes", p.minutes());
            row.put("stop_at", prospect.stopAt());
            row.put("stops", prospect.stops());
            row.put("stop_band", band(plan.stop(open)));
            row.put("stop_bands", bands(plan, open, prospect.stops().keySet()));
            row.put("within", hours == null ? null : p.within());
            row.put("inches", open.what().inches());
            row.put("spent", open.what().spent());
            row.put("family", p.candidate().family());
            row.put("chance", prospect.chance());
            row.put("saved", prospect.saved());
            row.put("do_first", note.doFirst());
            row.put("part", note.part());
            row.put("place", note.place());
            row.put("days", p.candidate().days());
            row.put("why", note.why());
            rows.add(row);
        }
        json.put("rows", rows);
        json.put("donors", DonorView.json(notes.donors().pairs()));
        json.put("waiting", plan.waiting().stream().map(s -> s.unit().value()).toList());
        json.put(
                "not_worth_taking",
                plan.notWorthTaking().stream().map(OpenBench::unit).toList());
        Map<String, String> instead = new LinkedHashMap<>();
        plan.notWorthTaking()
                .forEach(o -> instead.put(o.unit(), plan.otherwise(o).code()));
        json.put("instead", instead);
        return json;
    }

    private static List<Integer> band(Stop stop) {
        return List.of(stop.low(), stop.high());
    }

    private static Map<String, List<Integer>> bands(BenchPlan plan, OpenBench open, Set<String> faults) {
        Map<String, List<Integer>> bands = new LinkedHashMap<>();
        faults.forEach(f -> bands.put(f, band(plan.stopIfFound(open, f))));
        return bands;
    }

    private static Column droppable(Column column, boolean narrow, int rank) {
        return narrow ? column.asDroppable(rank) : column;
    }

    /** @param narrow whether what can be had by other commands is left out rather than the rest cut */
    private Table table(BenchPlan plan, List<Place> order, int shown, QueueNotes notes, boolean narrow) {
        Table.Builder table = Table.of(
                Column.of("place_in_queue", "#", Kind.COUNT),
                Column.of("unit", "unit", Kind.KEY),
                Column.screen("set", Kind.KEY),
                Column.data("set", Kind.TEXT),
                Column.of("likely", "likely", Kind.KEY),
                droppable(Column.screen("do first", Kind.KEY), narrow, 1),
                Column.data("do_first", Kind.TEXT),
                Column.of("gain", "gain", Kind.MINUTES),
                Column.of("minutes", "min", Kind.MINUTES),
                Column.screen("stop at", Kind.KEY),
                Column.data("stop_at", Kind.COUNT),
                Column.data("stop_low", Kind.COUNT),
                Column.data("stop_high", Kind.COUNT),
                Column.of("place", "where", Kind.TEXT).asDroppable(3),
                Column.data("part", Kind.TEXT),
                droppable(Column.screen("why now", Kind.KEY), narrow, 2),
                Column.data("why", Kind.TEXT),
                Column.data("days", Kind.COUNT),
                Column.data("saved", Kind.RATIO),
                Column.data("within", Kind.YES_NO));
        for (int i = 0; i < shown; i++) {
            Place p = order.get(i);
            var prospect = p.candidate().prospect();
            QueueNotes.Note note = notes.of(order, i);
            Stop stop = plan.stop(plan.mustBeOpen(p.candidate().unit()));
            table.row(
                    i + 1,
                    p.candidate().unit(),
                    note.model(),
                    note.set(),
                    prospect.likely(),
                    note.doFirst(),
                    note.doFirst(),
                    prospect.gain(),
                    p.minutes(),
                    stop.words(),
                    stop.minute(),
                    stop.low(),
                    stop.high(),
                    note.place(),
                    note.part(),
                    note.briefly(),
                    note.why(),
                    p.candidate().days(),
                    prospect.saved(),
                    hours == null ? null : p.within());
        }
        return table.build();
    }

    private void print(Session session, BenchPlan plan, List<Place> order, QueueNotes notes) {
        if (order.isEmpty()) {
            session.say("No set on the bench is expected to bring more than stripping it.");
        } else {
            List<Place> shown = new ArrayList<>();
            for (Place p : order) {
                if (hours == null ? shown.size() < SHOWN : p.within()) {
                    shown.add(p);
                }
            }
            boolean narrow = session.terminal().screen().width() < Screen.WIDEST;
            session.print(table(plan, shown, shown.size(), notes, narrow), Format.TABLE);
            summary(session, order, shown);
        }
        DonorView.say(session, notes.donors().pairs());
        waiting(session, plan);
        int strip = plan.notWorthTaking().size();
        if (strip > 0) {
            Map<Route, List<String>> instead = new TreeMap<>();
            plan.notWorthTaking()
                    .forEach(o -> instead.computeIfAbsent(plan.otherwise(o), r -> new ArrayList<>())
                            .add(o.unit()));
            instead.forEach((route, units) -> Wording.say(
                    session,
                    Plural.of(units.size(), "set") + " not worth a turn, better: " + route.code() + ": "
                            + String.join(", ", units.subList(0, Math.min(WAITING_SHOWN, units.size())))
                            + (units.size() > WAITING_SHOWN ? ", ..." : ".")));
        }
        if (plan.shadow() > 0) {
            session.say(String.format(
                    Locale.ROOT,
                    "More work than time: a minute at the bench is worth %.2f beyond labour, and stops allow for it.",
                    plan.shadow()));
        }
    }

    private void summary(Session session, List<Place> order, List<Place> shown) {
        double minutes = shown.stream().mapToDouble(Place::minutes).sum();
        double gain =
                shown.stream().mapToDouble(p -> p.candidate().prospect().gain()).sum();
        StringBuilder line = new StringBuilder(String.format(
                Locale.ROOT,
                "%s: %.1f h, expected gain %.0f %s.",
                Plural.of(shown.size(), "set"),
                minutes / 60,
                gain,
                session.shop().settings().currency()));
        List<Place> left = order.stream().filter(p -> !shown.contains(p)).toList();
        if (!left.isEmpty()) {
            line.append(left.size() == 1 ? " Left out: " : " Next best left out: ");
            line.append(String.join(
                    ", ",
                    left.stream()
                            .limit(LEFT_OUT)
                            .map(p -> String.format(
                                    Locale.ROOT,
                                    "%s (%.0f in %.0f min)",
                                    p.candidate().unit(),
                                    p.candidate().prospect().gain(),
                                    p.minutes()))
                            .toList()));
            line.append(left.size() > LEFT_OUT ? ", " + (left.size() - LEFT_OUT) + " more." : ".");
        }
        Wording.say(session, line.toString());
    }

    private void waiting(Session session, BenchPlan plan) {
        List<TvSet> waiting = plan.waiting();
        if (waiting.isEmpty()) {
            return;
        }
        LocalDate today = asOf == null ? session.today() : asOf;
        List<String> some = new ArrayList<>();
        for (TvSet s : waiting.subList(0, Math.min(WAITING_SHOWN, waiting.size()))) {
            LocalDate due = s.expectedOn();
            some.add(s.unit() + " (" + s.waitingFor()
                    + (due == null ? "" : (due.isBefore(today) ? ", was due " : ", due ") + due) + ")");
        }
        Wording.say(
                session,
                Plural.of(waiting.size(), "set") + " waiting for a part, skipped: " + String.join(", ", some)
                        + (waiting.size() > some.size() ? ", ..." : "."));
    }
}
