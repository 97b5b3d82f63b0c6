package org.salvedge.worth;

import java.time.LocalDate;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Names;

/**
 * What of a history had happened by a day: lots bought by then with their sets, attempts, exits and comebacks of that day and
 * before. It knows nothing of when things were recorded: where that matters, let the ledger cut.
 */
public final class HistoryCut {
    private final History from;
    private final HistoryBuilder to;
    private final int day;

    private HistoryCut(History from, int day) {
        this.from = from;
        this.day = day;
        to = History.builder(from.currency());
    }

    /** The part of a full history that had happened by the end of the day. */
    public static History endOf(LocalDate day, History history) {
        return new HistoryCut(history, (int) day.toEpochDay()).cut();
    }

    private History cut() {
        int[] lotOf = new int[from.lots()];
        int lots = 0;
        for (int l = 0; l < lotOf.length; l++) {
            lotOf[l] = -1;
            if (from.lotBought(l) <= day) {
                lotOf[l] = lots++;
                boolean here = from.lotArrival(l) <= day;
                to.lot(
                        from.lotNames().text(l),
                        copy(from.suppliers(), from.lotSupplier(l), to.suppliers()),
                        from.lotBought(l),
                        from.lotArrival(l),
                        from.lotCost(l),
                        here ? from.lotMicros(l) : -1);
            }
        }
        for (int s = 0; s < from.sets(); s++) {
            int lot = lotOf[from.setLot(s)];
            if (lot >= 0) {
                set(s, lot);
            }
        }
        return to.build();
    }

    /** Of a lot under way, only what its seller listed is known. */
    private void set(int s, int lot) {
        boolean here = from.lotArrival(from.setLot(s)) <= day;
        if (!here && !from.onManifest(s)) {
            return;
        }
        boolean listed = !here && from.setListedModel(s) >= 0;
        int model = listed ? from.setListedModel(s) : from.setModel(s);
        int flags = (from.arrived(s) || !here ? History.ARRIVED : 0)
                | (from.incomplete(s) && here ? History.INCOMPLETE : 0)
                | (from.onManifest(s) ? History.ON_MANIFEST : 0);
        to.set(
                s,
                lot,
                copy(from.families(), from.setFamily(s), to.families()),
                copy(from.makers(), from.setMaker(s), to.makers()),
                copy(from.models(), model, to.models()),
                copy(from.claims(), from.setClaimed(s), to.claims()),
                from.setInches(s),
                copy(from.makers(), from.setListedMaker(s), to.makers()),
                listed ? -1 : copy(from.models(), from.setListedModel(s), to.models()),
                from.setListedInches(s),
                flags,
                from.setAsking(s),
                from.setLanded(s));
        to.label(from.label(s));
        for (int a = from.attemptStart(s); a < from.attemptStart(s + 1); a++) {
            if (from.attemptDay(a) <= day) {
                to.attempt(
                        s,
                        from.attemptDay(a),
                        from.attemptSecond(a),
                        from.attemptNumber(a),
                        copy(from.faults(), from.attemptFault(a), to.faults()),
                        copy(from.fixes(), from.attemptFix(a), to.fixes()),
                        copy(from.technicians(), from.attemptTechnician(a), to.technicians()),
                        from.attemptPassed(a),
                        from.attemptGrade(a),
                        from.attemptDiagnosisMicros(a),
                        from.attemptFixMicros(a),
                        from.attemptParts(a));
            }
        }
        for (int e = from.exitStart(s); e < from.exitStart(s + 1); e++) {
            if (from.exitDay(e) <= day) {
                to.exit(
                        s,
                        from.exitDay(e),
                        from.exitSeq(e),
                        from.exitKind(e),
                        from.exitGone(e),
                        from.exitGross(e),
                        from.exitCosts(e),
                        from.exitMicros(e),
                        copy(from.channels(), from.exitChannel(e), to.channels()),
                        from.exitGrade(e));
            }
        }
        for (int c = from.comebackStart(s); c < from.comebackStart(s + 1); c++) {
            if (from.comebackDay(c) <= day) {
                to.comeback(
                        s,
                        from.comebackDay(c),
                        from.comebackCost(c),
                        from.comebackRestocked(c),
                        copy(from.faults(), from.comebackFault(c), to.faults()));
            }
        }
    }

    private static int copy(Names from, int number, Names to) {
        return number < 0 ? -1 : to.number(from.text(number));
    }
}
