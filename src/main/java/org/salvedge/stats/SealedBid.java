package org.salvedge.stats;

/**
 * What a sealed bid brings on average when winning and worth go together: the winner's curse.
 *
 * <p>Source: W. F. Samuelson and M. H. Bazerman, "The winner's curse in bilateral negotiations", Research in Experimental Economics 3
 * (1985) 105-137.
 */
public final class SealedBid {
    private SealedBid() {}

    /**
     * Mean over cases of worth less bid where the bid wins, 0 where it does not.
     *
     * @param bid paid if it wins
     * @param worth to the bidder in each case
     * @param needed smallest bid that wins in each case
     */
    public static double expectedProfit(double bid, double[] worth, double[] needed) {
        double sum = 0;
        for (int i = 0; i < worth.length; i++) {
            sum += bid >= needed[i] ? worth[i] - bid : 0;
        }
        return sum / worth.length;
    }
}
