package org.salvedge.worth.study;

/**
 * What one forecaster said of one lot, and what came of it.
 *
 * @param shop clusters: lots of one shop share its history and the errors learnt from it
 * @param truth the oracle's word
 * @param asking price asked for the lot
 * @param spoiled from the supplier that turned bad
 * @param known share of its sets whose model the history has
 * @param extra counted in its world only
 * @param sets on the manifest
 */
record Judged(
        World world,
        long shop,
        Forecast said,
        Forecast truth,
        double outcome,
        double asking,
        boolean spoiled,
        double known,
        boolean extra,
        int sets) {
    boolean within(double share) {
        return outcome >= said.quantile((1 - share) / 2) && outcome <= said.quantile((1 + share) / 2);
    }

    double width(Forecast of) {
        return of.quantile(0.9) - of.quantile(0.1);
    }

    double trueProfit() {
        return truth.mean() - asking;
    }

    /** Bought if and only if the price is not above the break-even bid. */
    boolean bought() {
        return asking <= said.mean();
    }

    double missed() {
        return Math.max(0, trueProfit()) - (bought() ? trueProfit() : 0);
    }

    double lossForeseen() {
        return said.below(asking);
    }

    boolean lost() {
        return outcome < asking;
    }
}
