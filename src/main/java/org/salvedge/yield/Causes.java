package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Text;
import org.salvedge.stats.Holm;

/**
 * What may be behind the change of a month against the twelve before it, likeliest first. Each fix, each supplier, the mix and the
 * price are tested on their own; the chance of a false alarm is that of all tests together (Holm 1979).
 */
public final class Causes {
    private static final int FEWEST_SETS = 10;

    private Causes() {}

    /** All that were looked at; none where the record is too thin to tell. */
    public static List<Cause> of(Outcomes outcomes, YearMonth month) {
        CauseData data = CauseData.of(outcomes, month);
        int sets = 0;
        for (int i = 0; i < data.found.size(); i++) {
            sets += data.found.month.getInt(i) == CauseData.NOW ? 1 : 0;
        }
        List<Suspect> suspects = new ArrayList<>();
        if (sets >= FEWEST_SETS) {
            FaultWorth worth = new FaultWorth(data);
            FixSuspects fixes = new FixSuspects(data);
            suspects.addAll(fixes.suspects(sets));
            suspects.addAll(new SetSuspects(data, worth, fixes.expected()).suspects());
        }
        suspects.addAll(PriceSuspect.of(data));
        double[] adjusted =
                Holm.adjust(suspects.stream().mapToDouble(Suspect::p).toArray());
        List<Cause> causes = new ArrayList<>();
        for (int i = 0; i < adjusted.length; i++) {
            Suspect s = suspects.get(i);
            causes.add(new Cause(s.kind(), s.what(), s.effect(), s.error(), s.p(), adjusted[i], s.sets(), sets));
        }
        causes.sort(Comparator.comparingDouble(Cause::p)
                .thenComparing(Cause::kind)
                .thenComparing(Cause::what, Text.CODE_POINTS));
        return List.copyOf(causes);
    }
}
