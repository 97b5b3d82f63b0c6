package org.salvedge.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * A set that is still here.
 *
 * @param passed it passed and waits to be sold; else it is on the bench
 * @param days since its lot arrived
 * @param minutes spent on it so far
 * @param cost landed cost, parts, labour and comebacks so far, less what it has brought
 */
public record OpenSet(
        String unit,
        String lot,
        String family,
        String model,
        String claimed,
        boolean passed,
        int days,
        int attempts,
        double minutes,
        Money cost) {
    private static final double MICROS = 1e6;

    /** All sets here at the end of a day, those longest here first, then by label. */
    public static List<OpenSet> of(Outcomes outcomes, LocalDate asOf) {
        History h = outcomes.history();
        int today = (int) asOf.toEpochDay();
        List<OpenSet> open = new ArrayList<>();
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set) || outcomes.gone(set) || h.lotArrival(h.setLot(set)) > today) {
                continue;
            }
            open.add(new OpenSet(
                    h.label(set),
                    h.lotNames().text(h.setLot(set)),
                    h.families().text(h.setFamily(set)),
                    h.models().text(h.setModel(set)),
                    h.claims().text(h.setClaimed(set)),
                    outcomes.passed(set),
                    today - h.lotArrival(h.setLot(set)),
                    h.attemptStart(set + 1) - h.attemptStart(set),
                    outcomes.micros(set) / MICROS,
                    new Money(-outcomes.margin(set), h.currency())));
        }
        open.sort(Comparator.comparingInt(OpenSet::days).reversed().thenComparing(OpenSet::unit, Text.CODE_POINTS));
        return List.copyOf(open);
    }
}
