package org.salvedge.worth;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a lot is worth.
 *
 * @param sets on the manifest
 * @param historyLots lots the answer rests on
 * @param historySets sets of these
 * @param recovery net recovery of the lot, book currency, before any purchase cost and after its own labour
 * @param minutes bench minutes, the lot's own minutes included
 * @param donors what donors of boards save; null = the record shows no use of them
 * @param lines in order of the manifest
 * @param notes what the buyer should know about the answer, the weightiest first
 */
public record LotWorth(
        int sets,
        int historyLots,
        int historySets,
        Predictive recovery,
        Predictive minutes,
        @Nullable DonorGain donors,
        List<LineWorth> lines,
        List<String> notes) {
    public LotWorth {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }
}
