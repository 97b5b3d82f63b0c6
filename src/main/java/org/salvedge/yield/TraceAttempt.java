package org.salvedge.yield;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;
import org.salvedge.shop.Timeline.Result;

/**
 * An attempt that a figure of a fix rests on.
 *
 * @param first whether it was the set's first with a fix at that fault
 * @param minutes diagnosis and fix, where known
 */
public record TraceAttempt(
        String fault,
        String fix,
        String family,
        String unit,
        int number,
        LocalDate on,
        boolean first,
        boolean passed,
        double minutes,
        Money parts) {
    /** More than these are listed for the month alone. */
    public static final int MOST = 20_000;

    private static final int MONTHS = 12;
    private static final double MICROS = 1e6;

    /** By fix, fault and family, then by day: of the twelve months up to the month's end, or of the month where these are too many. */
    static List<TraceAttempt> of(Outcomes o, YearMonth month) {
        List<TraceAttempt> rows = new ArrayList<>();
        int year = Days.of(month.minusMonths(MONTHS - 1L)).first();
        int last = Days.of(month).last();
        // Most of a long record is older, and of a large shop even the year is too much to list.
        if (!list(o, year, last, MOST, rows)) {
            rows.clear();
            list(o, Days.of(month).first(), last, Integer.MAX_VALUE, rows);
        }
        rows.sort(Comparator.comparing(TraceAttempt::fix, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::fault, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::family, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::on)
                .thenComparingInt(TraceAttempt::number)
                .thenComparing(TraceAttempt::unit, Text.CODE_POINTS));
        return List.copyOf(rows);
    }

    /** Lists the attempts of some days; false as soon as there are more than that many. */
    private static boolean list(Outcomes o, int from, int to, int most, List<TraceAttempt> rows) {
        History h = o.history();
        int noFix = h.fixes().find(Fix.NONE.code());
        for (int set = 0; set < h.sets(); set++) {
            for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
                Result result = o.result(a);
                if (h.attemptDay(a) >= from
                        && h.attemptDay(a) <= to
                        && h.attemptFix(a) != noFix
                        && (result == Result.PASS || result == Result.FAIL)) {
                    if (rows.size() == most) {
                        return false;
                    }
                    rows.add(new TraceAttempt(
                            h.faults().text(h.attemptFault(a)),
                            h.fixes().text(h.attemptFix(a)),
                            h.families().text(h.setFamily(set)),
                            h.label(set),
                            h.attemptNumber(a),
                            LocalDate.ofEpochDay(h.attemptDay(a)),
                            AttemptOrder.first(h, set, a, noFix),
                            result == Result.PASS,
                            o.attemptMicros(a) / MICROS,
                            new Money(h.attemptParts(a), h.currency())));
                }
            }
        }
        return true;
    }
}
