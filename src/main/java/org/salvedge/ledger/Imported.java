package org.salvedge.ledger;

/**
 * What an import put on record.
 *
 * @param firstEntry number of its first entry; the others follow without a gap
 */
public record Imported(
        long firstEntry,
        long lots,
        long sets,
        long attempts,
        long exits,
        long comebacks,
        long parts,
        long recipes,
        long bids,
        long offers) {
    /** All rows together. */
    public long rows() {
        return lots + sets + attempts + exits + comebacks + parts + recipes + bids + offers;
    }
}
