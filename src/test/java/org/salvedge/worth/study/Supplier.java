package org.salvedge.worth.study;

/**
 * The truth of one supplier.
 *
 * @param truth share of claims made in good faith by one who looked
 * @param junk shares of faults where the claim is not true
 * @param glass share of sets with hidden broken glass, on top of what the claims say
 * @param missing share of listed sets that are not on the pallet
 * @param credit paid for each missing set; 0 = none
 * @param mislisted share of sets that turn out to be another model
 * @param unlisted share of sets listed without a model number
 * @param claims how often each claim is made
 * @param taste what it buys: exponent of price
 * @param asking stated value as a share of a working set's price; 0 = not stated
 * @param lotSize mean sets a lot
 * @param share of the lots
 */
record Supplier(
        String name,
        double truth,
        Shares junk,
        double glass,
        double missing,
        double credit,
        double mislisted,
        double unlisted,
        Shares claims,
        double taste,
        double asking,
        double askingNoise,
        double lotSize,
        double share) {

    static Supplier draw(String name, Dice dice) {
        double[] junk = Symptoms.junk();
        for (int f = 0; f < junk.length; f++) {
            junk[f] *= dice.gamma(3, 1);
        }
        double[] claims = Symptoms.claimed();
        for (int c = 0; c < claims.length; c++) {
            claims[c] *= dice.gamma(0.8, 1);
        }
        return new Supplier(
                name,
                dice.chance(0.35) ? dice.between(0.4, 0.62) : dice.between(0.7, 0.93),
                Shares.of(junk),
                dice.chance(0.3) ? dice.between(0.1, 0.2) : dice.between(0.01, 0.05),
                dice.between(0.002, 0.025),
                dice.chance(0.5) ? dice.whole(8, 25) : 0,
                dice.between(0.005, 0.05),
                dice.chance(0.3) ? dice.between(0.03, 0.15) : 0.01,
                Shares.of(claims),
                dice.between(-1.1, 1),
                dice.chance(0.25) ? 0 : dice.between(0.8, 2.2),
                dice.between(0.12, 0.5),
                dice.between(55, 135),
                dice.gamma(2, 1));
    }

    /** As it is once it has turned bad. */
    Supplier goneBad(Dice dice) {
        return new Supplier(
                name,
                truth * dice.between(0.6, 0.8),
                junk,
                glass + dice.between(0.12, 0.24),
                missing + dice.between(0.01, 0.05),
                credit,
                mislisted + dice.between(0, 0.04),
                unlisted,
                claims,
                taste,
                asking,
                askingNoise,
                lotSize,
                share);
    }
}
