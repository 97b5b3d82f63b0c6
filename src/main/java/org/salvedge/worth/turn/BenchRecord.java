package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.Coded;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/** What the bench has done, set by set, as the estimates of the queue need it. */
final class BenchRecord {
    private static final double MICROS = 1e6;

    private final List<String> faults = new ArrayList<>();
    private final List<Found> found = new ArrayList<>();
    private final List<Try> tries = new ArrayList<>();
    private final List<Look> looks = new ArrayList<>();
    private final List<Sale> sales = new ArrayList<>();
    private final List<Sale> stripped = new ArrayList<>();
    private final List<AsIs> soldAsTheyAre = new ArrayList<>();
    private double comebackCost;

    /** A fault that was found. */
    record Found(String claim, String family, String supplier, int fault) {}

    /**
     * A fix that was tried and retested.
     *
     * @param later another fix was tried on this fault of the set before
     * @param minutes of the fix; not a number = not known
     */
    record Try(int lot, String family, int fault, boolean later, boolean passed, double minutes, double parts) {}

    /** Minutes to find a fault. */
    record Look(int fault, double minutes) {}

    /** A set that went as sold after a pass, or as stripped; money in units of the currency. */
    record Sale(String family, double inches, double gross, double costs, double minutes, int day) {}

    /** A set sold that did not pass; fault -1 = none was found. */
    record AsIs(int fault, Sale sale) {}

    BenchRecord(History h) {
        Fault.BUILT_IN.keySet().stream().map(Coded::code).forEach(faults::add);
        for (int i = 0; i < h.faults().size(); i++) {
            if (!faults.contains(h.faults().text(i))) {
                faults.add(h.faults().text(i));
            }
        }
        int[] number = new int[h.faults().size()];
        for (int i = 0; i < number.length; i++) {
            number[i] = faults.indexOf(h.faults().text(i));
        }
        double unit = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        Timeline timeline = new Timeline();
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set)) {
                h.walk(set, timeline);
                read(h, set, timeline, number, unit);
            }
        }
    }

    private void read(History h, int set, Timeline t, int[] number, double unit) {
        String family = h.families().text(h.setFamily(set));
        int none = h.fixes().find(Fix.NONE.code());
        int unknown = faults.indexOf(Fault.UNKNOWN.code());
        int last = -1;
        boolean[] tried = new boolean[faults.size()];
        int first = h.attemptStart(set);
        for (int a = first; a < h.attemptStart(set + 1); a++) {
            int fault = number[h.attemptFault(a)];
            last = fault == unknown && last >= 0 ? last : fault;
            double look = minutes(h.attemptDiagnosisMicros(a));
            if (look > 0 && !tried[fault]) {
                looks.add(new Look(fault, look));
            }
            Timeline.Result result = t.result(a - first);
            if (result == Timeline.Result.PASS || result == Timeline.Result.FAIL) {
                double fixing = minutes(h.attemptFixMicros(a));
                boolean noFix = h.attemptFix(a) == none;
                tries.add(new Try(
                        h.setLot(set),
                        family,
                        fault,
                        tried[fault],
                        result == Timeline.Result.PASS,
                        noFix ? 1 : fixing,
                        h.attemptParts(a) / unit));
                tried[fault] = true;
            }
        }
        if (last >= 0) {
            found.add(new Found(
                    h.claims().text(h.setClaimed(set)),
                    family,
                    h.suppliers().text(h.lotSupplier(h.setLot(set))),
                    last));
        }
        for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
            comebackCost += h.comebackCost(c) / unit;
        }
        exits(h, set, t, family, unit, last);
    }

    private void exits(History h, int set, Timeline t, String family, double unit, int fault) {
        if (t.state() != Timeline.State.GONE) {
            return;
        }
        int e = h.exitStart(set) + t.lastExit();
        Sale sale = new Sale(
                family,
                h.setInches(set) / MICROS,
                h.exitGross(e) / unit,
                h.exitCosts(e) / unit,
                Math.max(0, h.exitMicros(e)) / MICROS,
                h.exitDay(e));
        if (t.saved() && h.exitKind(e) == ExitKind.SOLD.ordinal() && sale.gross() > 0) {
            sales.add(sale);
        } else if (h.exitKind(e) == ExitKind.STRIPPED.ordinal()) {
            stripped.add(sale);
        } else if (h.exitKind(e) == ExitKind.SOLD.ordinal()) {
            soldAsTheyAre.add(new AsIs(fault, sale));
        }
    }

    private static double minutes(long micros) {
        return micros < 0 ? Double.NaN : micros / MICROS;
    }

    /** Codes in a fixed order: those there from the start, then the shop's own. */
    List<String> faults() {
        return faults;
    }

    List<Found> found() {
        return found;
    }

    List<Try> tries() {
        return tries;
    }

    List<Look> looks() {
        return looks;
    }

    List<Sale> sales() {
        return sales;
    }

    List<Sale> stripped() {
        return stripped;
    }

    List<AsIs> soldAsTheyAre() {
        return soldAsTheyAre;
    }

    /** What comebacks cost in all. */
    double comebackCost() {
        return comebackCost;
    }
}
