package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Text;
import org.salvedge.shop.Timeline.Result;
import org.salvedge.stats.LearningFit;

/**
 * How the minutes of a fix that worked fell with each doubling of how often it was tried, over the whole record (unit curve of Crawford).
 *
 * @param tried attempts so far
 * @param timed passes with known minutes, that the curve rests on
 * @param rate of the minutes left at each doubling
 * @param first minutes of the first by the curve
 * @param latest of the latest by the curve
 */
public record Learning(String fix, int tried, int timed, Range rate, double first, double latest) {
    private static final int FEWEST = 30;
    private static final double LEVEL = 0.95;
    private static final double MICROS = 1e6;
    private static final int SECONDS_A_DAY = 86_400;

    /** Fixes whose record is long enough, by code. */
    static List<Learning> of(Outcomes o) {
        History h = o.history();
        int noFix = h.fixes().find(Fix.NONE.code());
        int fixes = h.fixes().size();
        LongArrayList[] rows = new LongArrayList[fixes];
        for (int f = 0; f < fixes; f++) {
            rows[f] = new LongArrayList();
        }
        for (int a = 0; a < h.attempts(); a++) {
            if (h.attemptFix(a) != noFix && (o.result(a) == Result.PASS || o.result(a) == Result.FAIL)) {
                long time = (long) h.attemptDay(a) * SECONDS_A_DAY + h.attemptSecond(a);
                rows[h.attemptFix(a)].add(time << 31 | a);
            }
        }
        return IntStream.range(0, fixes)
                .parallel()
                .boxed()
                .flatMap(f -> of(o, h.fixes().text(f), rows[f]).stream())
                .sorted(Comparator.comparing(Learning::fix, Text.CODE_POINTS))
                .toList();
    }

    private static List<Learning> of(Outcomes o, String fix, LongArrayList rows) {
        History h = o.history();
        rows.sort(null);
        LongArrayList number = new LongArrayList();
        DoubleArrayList minutes = new DoubleArrayList();
        for (int i = 0; i < rows.size(); i++) {
            int a = (int) (rows.getLong(i) & 0x7fff_ffffL);
            if (o.result(a) == Result.PASS && h.attemptFixMicros(a) > 0) {
                number.add(i + 1L);
                minutes.add(h.attemptFixMicros(a) / MICROS);
            }
        }
        if (minutes.size() < FEWEST) {
            return List.of();
        }
        LearningFit fit = LearningFit.of(number.toLongArray(), minutes.toDoubleArray());
        List<Learning> one = new ArrayList<>(1);
        one.add(new Learning(
                fix,
                rows.size(),
                minutes.size(),
                Range.of(fit.curve().rate(), fit.rateInterval(LEVEL)),
                fit.curve().unit(1),
                fit.curve().unit(rows.size())));
        return one;
    }
}
