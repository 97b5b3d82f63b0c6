package org.salvedge.worth;

import java.util.List;
import org.salvedge.shop.PartKind;

/**
 * What boards out of sets with broken glass are expected to save: means over the draws, in book currency. It stands in the lot's
 * recovery already, except for what falls to sets that are in the shop and so in the books of other lots.
 *
 * @param pairs sets of the lot that get a board out of the lot or of what is here
 * @param gain what that saves the lot
 * @param sd standard deviation of it
 * @param takeUp share of the pairings that could be that the shop makes, from its record
 * @param pairsHere boards of the lot for sets that are on the bench already; not in the recovery
 * @param gainHere what these save; not in the recovery
 * @param rows the most first
 */
public record DonorGain(
        double pairs, double gain, double sd, double takeUp, double pairsHere, double gainHere, List<Row> rows) {
    public DonorGain {
        rows = List.copyOf(rows);
    }

    /**
     * Boards of a kind for sets of a family.
     *
     * @param byNumber part numbers say what fits; else the family does
     */
    public record Row(PartKind kind, String family, boolean byNumber, double pairs, double gain) {}
}
