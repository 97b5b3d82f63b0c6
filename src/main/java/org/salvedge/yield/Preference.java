package org.salvedge.yield;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.stats.Gaussian;

/**
 * Which fix to try first for a fault.
 *
 * @param family "" = over all families
 * @param over the next best
 * @param gain of preferring it, an attempt, units of the currency
 * @param chanceWrong at most: that one of the others is better
 */
public record Preference(
        String family,
        String fault,
        String fix,
        String over,
        Range gain,
        double chanceWrong,
        int first,
        int firstOver) {
    /** First attempts below which a fix is not compared. */
    static final int FEWEST = 8;

    private static final double HALF_WIDTH = 1.959964;

    /** @param lines of one fault and family side by side, the best first */
    static List<Preference> of(List<FixLine> lines) {
        List<Preference> out = new ArrayList<>();
        for (int i = 0; i < lines.size(); ) {
            int end = i;
            List<FixLine> rivals = new ArrayList<>();
            while (end < lines.size()
                    && lines.get(end).fault().equals(lines.get(i).fault())
                    && lines.get(end).family().equals(lines.get(i).family())) {
                if (lines.get(end).first() >= FEWEST) {
                    rivals.add(lines.get(end));
                }
                end++;
            }
            if (rivals.size() > 1) {
                out.add(among(rivals));
            }
            i = end;
        }
        return List.copyOf(out);
    }

    private static Preference among(List<FixLine> rivals) {
        FixLine best = rivals.get(0);
        FixLine next = rivals.get(1);
        double wrong = 0;
        for (FixLine other : rivals.subList(1, rivals.size())) {
            double gap = best.increment().value() - other.increment().value();
            double se = Math.hypot(se(best), se(other));
            wrong += se == 0 ? gap > 0 ? 0 : 0.5 : Gaussian.above(gap / se);
        }
        double gap = best.increment().value() - next.increment().value();
        return new Preference(
                best.family(),
                best.fault(),
                best.fix(),
                next.fix(),
                Range.normal(gap, Math.hypot(se(best), se(next))),
                Math.min(1, wrong),
                best.first(),
                next.first());
    }

    private static double se(FixLine line) {
        return (line.increment().high() - line.increment().value()) / HALF_WIDTH;
    }
}
