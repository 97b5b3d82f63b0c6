package org.salvedge.ledger;

import java.util.List;
import org.salvedge.shop.UnitId;

/**
 * What was put on record of one kind after a certain entry.
 *
 * @param kind the table's name: {@code attempt}, {@code exit}, ...
 * @param recorded things that were not on record before
 * @param corrected entries that replaced one from before
 * @param takenBack entries, from before or since, that were taken back
 * @param sets concerned, in order of their labels
 */
public record Recorded(String kind, int recorded, int corrected, int takenBack, List<UnitId> sets) {
    public Recorded {
        sets = List.copyOf(sets);
    }
}
