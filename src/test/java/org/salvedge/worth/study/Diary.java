package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;

/** Everything that ever happens in one invented shop; {@link #asOf} gives what is known of it at a day's end. */
final class Diary {
    private static final long MICROS = 1_000_000;

    private record LotRow(Listing listing, int arrival, long cost, int minutes) {}

    private record SetRow(int lot, int index, int family, boolean asListed, boolean arrived, boolean incomplete) {}

    private record AttemptRow(
            int set,
            int day,
            int minute,
            int fault,
            int fix,
            int technician,
            int passed,
            int grade,
            int diagnosis,
            int minutes,
            long parts) {}

    private record ExitRow(int set, int day, int kind, long gross, long costs, int minutes, int channel, int grade) {}

    private record ComebackRow(int set, int day, long cost, boolean restocked, int fault) {}

    private final List<Family> families;
    private final int firstDay;
    private final List<LotRow> lots = new ArrayList<>();
    private final List<SetRow> sets = new ArrayList<>();
    private final List<AttemptRow> attempts = new ArrayList<>();
    private final List<ExitRow> exits = new ArrayList<>();
    private final List<ComebackRow> comebacks = new ArrayList<>();

    /** @param firstDay epoch day of day 0 */
    Diary(List<Family> families, int firstDay) {
        this.families = families;
        this.firstDay = firstDay;
    }

    /** A recorder of the next lot; {@link #add} it once it has run. */
    Recorder lotRecorder() {
        int lot = lots.size();
        int firstSet = sets.size();
        return new Recorder() {
            @Override
            public void set(int index, int family, boolean asListed, boolean arrived, boolean incomplete) {
                sets.add(new SetRow(lot, index, family, asListed, arrived, incomplete));
            }

            @Override
            public void attempt(
                    int index,
                    int day,
                    int minute,
                    int fault,
                    int fix,
                    int technician,
                    int passed,
                    int grade,
                    int diagnosis,
                    int minutes,
                    long parts) {
                attempts.add(new AttemptRow(
                        firstSet + index,
                        day,
                        minute,
                        fault,
                        fix,
                        technician,
                        passed,
                        grade,
                        diagnosis,
                        minutes,
                        parts));
            }

            @Override
            public void exit(
                    int index, int day, int kind, long gross, long costs, int minutes, int channel, int grade) {
                exits.add(new ExitRow(firstSet + index, day, kind, gross, costs, minutes, channel, grade));
            }

            @Override
            public void comeback(int index, int day, long cost, boolean restocked, int fault) {
                comebacks.add(new ComebackRow(firstSet + index, day, cost, restocked, fault));
            }

            @Override
            public void lotMinutes(int minutes) {
                lotMinutes = minutes;
            }
        };
    }

    private int lotMinutes;

    void add(Listing listing, int arrival, long cost) {
        lots.add(new LotRow(listing, arrival, cost, lotMinutes));
    }

    int lots() {
        return lots.size();
    }

    /** The record at the end of that day: later events, and lots that are still on the road, are not in it. */
    History asOf(int day) {
        HistoryBuilder b = History.builder(Currency.getInstance("EUR"));
        int[] row = new int[lots.size()];
        for (int i = 0; i < lots.size(); i++) {
            LotRow lot = lots.get(i);
            row[i] = lot.arrival() > day ? -1 : b.lotNames().size();
            if (row[i] >= 0) {
                b.lot(
                        String.format("L%04d", i + 1),
                        b.suppliers().number(lot.listing().supplier.name()),
                        firstDay + lot.listing().day,
                        firstDay + lot.arrival(),
                        lot.cost(),
                        lot.minutes() * MICROS);
            }
        }
        for (int s = 0; s < sets.size(); s++) {
            if (row[sets.get(s).lot()] >= 0) {
                addSet(b, s, row[sets.get(s).lot()]);
            }
        }
        int number = 0;
        for (AttemptRow a : attempts) {
            number++;
            if (a.day() > day) {
                continue;
            }
            // What passed today is on its soak overnight.
            int passed = a.passed() == 1 && a.day() == day ? -1 : a.passed();
            b.attempt(
                    a.set(),
                    firstDay + a.day(),
                    a.minute() * 60,
                    number,
                    b.faults().number(Words.FAULTS.get(a.fault())),
                    b.fixes().number(Words.FIXES.get(a.fix())),
                    b.technicians().number("technician " + (a.technician() + 1)),
                    passed,
                    passed == 1 ? a.grade() : -1,
                    micros(a.diagnosis()),
                    micros(a.minutes()),
                    a.parts());
        }
        for (ExitRow e : exits) {
            if (e.day() <= day) {
                int channel = e.channel() < 0 ? -1 : b.channels().number(e.channel() == 0 ? "counter" : "post");
                b.exit(
                        e.set(),
                        firstDay + e.day(),
                        1,
                        e.kind(),
                        1,
                        e.gross(),
                        e.costs(),
                        micros(e.minutes()),
                        channel,
                        e.grade());
            }
        }
        for (ComebackRow c : comebacks) {
            if (c.day() <= day) {
                int fault = b.faults().number(Words.FAULTS.get(c.fault()));
                b.comeback(c.set(), firstDay + c.day(), c.cost(), c.restocked() ? 1 : 0, fault);
            }
        }
        return b.build();
    }

    private void addSet(HistoryBuilder b, int id, int lotRow) {
        SetRow s = sets.get(id);
        Listing listing = lots.get(s.lot()).listing();
        Family is = families.get(s.family());
        Family listed = families.get(listing.family[s.index()]);
        @Nullable String number = listing.model.get(s.index());
        String model = s.family() == listing.family[s.index()]
                ? number == null ? is.models().get(0) : number
                : is.models().get(is.models().size() - 1);
        int listedModel = s.asListed() ? -1 : b.models().number(number == null ? "unknown" : number);
        b.set(
                id,
                lotRow,
                b.families().number(is.name()),
                b.makers().number(is.maker()),
                b.models().number(s.arrived() || number != null ? model : "unknown"),
                b.claims().number(Words.CLAIMS.get(listing.claim[s.index()])),
                inches(is),
                listed.maker().equals(is.maker()) ? -1 : b.makers().number(listed.maker()),
                listedModel,
                listed.inches() == is.inches() ? -1 : inches(listed),
                (s.arrived() ? History.ARRIVED : 0) | (s.incomplete() ? History.INCOMPLETE : 0) | History.ON_MANIFEST,
                listing.asking[s.index()],
                -1);
    }

    private static long inches(Family family) {
        return Math.round(family.inches() * MICROS);
    }

    private static long micros(int minutes) {
        return minutes < 0 ? -1 : minutes * MICROS;
    }
}
