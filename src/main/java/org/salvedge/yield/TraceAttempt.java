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
        List<TraceAttempt> year = of(
                o,
                Days.of(month.minusMonths(MONTHS - 1L)).first(),
                Days.of(month).last());
        return year.size() <= MOST
                ? year
                : of(o, Days.of(month).first(), Days.of(month).last());
    }

    private static List<TraceAttempt> of(Outcomes o, int from, int to) {
        History h = o.history();
        int noFix = h.fixes().find(Fix.NONE.code());
        List<TraceAttempt> rows = new ArrayList<>();
        for (int set = 0; set < h.sets(); set++) {
            for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
                Result result = o.result(a);
                if (h.attemptDay(a) >= from
                        && h.attemptDay(a) <= to
                        && h.attemptFix(a) != noFix
                        && (result == Result.PASS || result == Result.FAIL)) {
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
        rows.sort(Comparator.comparing(TraceAttempt::fix, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::fault, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::family, Text.CODE_POINTS)
                .thenComparing(TraceAttempt::on)
                .thenComparingInt(TraceAttempt::number));
        return List.copyOf(rows);
    }
}
