package org.salvedge.manifest;

import java.util.List;
import org.salvedge.shop.Claim;

/**
 * How a seller's words were understood.
 *
 * @param text the seller's words
 * @param sureness 0 to 1
 * @param decidedBy the words that decided it; "" where none was known
 * @param others what else they say, worst first
 * @param sets of the list with these words
 */
public record ClaimWords(String text, Claim claim, double sureness, String decidedBy, List<Claim> others, int sets) {
    public ClaimWords {
        others = List.copyOf(others);
    }
}
