package org.salvedge.yield;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * A sold set that came back.
 *
 * @param days from sale to comeback
 * @param fix latest fix before the sale; "" if there was none
 * @param fault found when it came back; "" if not known
 * @param cost refund, transport and handling
 */
public record ComebackLine(
        LocalDate on,
        String unit,
        String family,
        LocalDate soldOn,
        int days,
        String fix,
        String fault,
        Money cost,
        boolean restocked) {

    /** The comebacks of one month, by day, then by label. */
    public static List<ComebackLine> of(Outcomes outcomes, YearMonth month) {
        History h = outcomes.history();
        Days days = Days.of(month);
        List<ComebackLine> lines = new ArrayList<>();
        for (int set = 0; set < h.sets(); set++) {
            for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
                if (days.hold(h.comebackDay(c)) && h.arrived(set)) {
                    add(h, set, c, lines);
                }
            }
        }
        lines.sort(Comparator.comparing(ComebackLine::on).thenComparing(ComebackLine::unit, Text.CODE_POINTS));
        return List.copyOf(lines);
    }

    private static void add(History h, int set, int comeback, List<ComebackLine> lines) {
        for (Sale sale : Sale.of(h, set)) {
            if (sale.comebacks().contains(comeback)) {
                int sold = h.exitDay(sale.exit());
                lines.add(new ComebackLine(
                        LocalDate.ofEpochDay(h.comebackDay(comeback)),
                        h.label(set),
                        h.families().text(h.setFamily(set)),
                        LocalDate.ofEpochDay(sold),
                        h.comebackDay(comeback) - sold,
                        fixText(h, latestFix(h, set, sold)),
                        h.faults().text(h.comebackFault(comeback)),
                        new Money(h.comebackCost(comeback), h.currency()),
                        h.comebackRestocked(comeback) == 1));
            }
        }
    }

    private static String fixText(History h, int fix) {
        return fix < 0 ? "" : h.fixes().text(fix);
    }

    /** Number in the dictionary of fixes of the latest attempt by a day; -1 without one. */
    static int latestFix(History h, int set, int byDay) {
        int latest = -1;
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            if (h.attemptDay(a) <= byDay && (latest < 0 || AttemptOrder.before(h, latest, a))) {
                latest = a;
            }
        }
        return latest < 0 ? -1 : h.attemptFix(latest);
    }
}
