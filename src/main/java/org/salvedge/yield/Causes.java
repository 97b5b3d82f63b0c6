package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Text;
import org.salvedge.stats.Holm;

/**
 * What may be behind the change of a month against the twelve before it, likeliest first. Each fix, each supplier, the mix and the
 * price are tested on their own. Each kind weighs alike, however many fixes or suppliers there are; the chance of a false alarm is that of
 * all tests together, so weighted (Holm 1979).
 */
public final class Causes {
    private static final int FEWEST_SETS = 10;
    /** Yields and minutes have their own rules and a share each of the false alarms accepted. */
    private static final double CHARTS = 2;

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
        double[] weights = weights(suspects);
        double[] adjusted =
                Holm.adjust(suspects.stream().mapToDouble(Suspect::p).toArray(), weights, CHARTS);
        List<Ranked> ranked = new ArrayList<>();
        for (int i = 0; i < adjusted.length; i++) {
            Suspect s = suspects.get(i);
            ranked.add(new Ranked(
                    s.p() / weights[i],
                    new Cause(s.kind(), s.what(), s.effect(), s.error(), s.p(), adjusted[i], s.sets(), sets)));
        }
        ranked.sort(Comparator.comparingDouble(Ranked::weighted)
                .thenComparing(r -> r.cause.kind())
                .thenComparing(r -> r.cause.what(), Text.CODE_POINTS));
        return ranked.stream().map(Ranked::cause).toList();
    }

    private record Ranked(double weighted, Cause cause) {}

    private static double[] weights(List<Suspect> suspects) {
        int[] ofKind = new int[Cause.Kind.values().length];
        suspects.forEach(s -> ofKind[s.kind().ordinal()]++);
        return suspects.stream()
                .mapToDouble(s -> 1.0 / ofKind[s.kind().ordinal()])
                .toArray();
    }
}
