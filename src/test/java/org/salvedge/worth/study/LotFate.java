package org.salvedge.worth.study;

/**
 * What the sets of one lot share and no bidder sees: rough handling raises broken glass and lowers success.
 *
 * @param glass share of sets with hidden broken glass
 * @param success factor on the chances of a repair
 * @param truth share of claims that are true
 * @param minutes factor on bench minutes
 * @param looks added to the chance of grade A
 */
record LotFate(double glass, double success, double truth, double minutes, double looks, double missing) {

    static LotFate draw(Supplier supplier, double strength, double gradeSpread, Dice dice) {
        double rough = dice.chance(0.82) ? dice.gamma(5, 0.8) : dice.between(1.5, 3);
        double more = strength * (rough - 1);
        return new LotFate(
                clamp(supplier.glass() * (1 + more) + 0.025 * more, 0, 0.75),
                clamp(1 - 0.09 * more + 0.05 * strength * dice.between(-1, 1), 0.35, 1.25),
                clamp(supplier.truth() - 0.04 * more + 0.05 * strength * dice.between(-1, 1), 0.15, 0.98),
                dice.gamma(60 / strength, 1),
                gradeSpread * (dice.chance(0.5) ? 0.07 : -0.07) * dice.uniform(),
                Math.min(0.5, supplier.missing() * dice.gamma(1.2, 1)));
    }

    private static double clamp(double x, double low, double high) {
        return Math.max(low, Math.min(high, x));
    }
}
