package org.salvedge.worth.study;

import java.util.List;

/**
 * The scores of one forecaster over some lots, amounts in currency units.
 *
 * @param in50 share of outcomes within the central 50 % interval; 80 and 90 alike
 * @param width mean width of the 80 % interval over the oracle's
 * @param crps over the oracle's
 * @param bias error of the mean over the true mean
 * @param missed true expected profit missed over what the oracle makes
 * @param brier of P(loss) at the asking price, less the oracle's
 * @param promise share of lots that bring at least the highest bid at confidence 0.8
 */
record Scores(
        int lots,
        Figure in50,
        Figure in80,
        Figure in90,
        Figure width,
        Figure crps,
        Figure bias,
        Figure missed,
        Figure brier,
        Figure promise) {
    private static final double CONFIDENCE = 0.8;

    static Scores of(List<Judged> lots) {
        return new Scores(
                lots.size(),
                Figure.share(lots, lot -> lot.within(0.5)),
                Figure.share(lots, lot -> lot.within(0.8)),
                Figure.share(lots, lot -> lot.within(0.9)),
                Figure.ratio(lots, lot -> lot.width(lot.said()), lot -> lot.width(lot.truth())),
                Figure.ratio(
                        lots,
                        lot -> lot.said().crps(lot.outcome()),
                        lot -> lot.truth().crps(lot.outcome())),
                Figure.ratio(
                        lots,
                        lot -> lot.said().mean() - lot.truth().mean(),
                        lot -> lot.truth().mean()),
                Figure.ratio(lots, Judged::missed, lot -> Math.max(0, lot.trueProfit())),
                Figure.mean(
                        lots,
                        lot -> brier(lot, lot.lossForeseen())
                                - brier(lot, lot.truth().below(lot.asking()))),
                Figure.share(lots, lot -> lot.outcome() >= lot.said().quantile(1 - CONFIDENCE)));
    }

    private static double brier(Judged lot, double p) {
        double error = p - (lot.lost() ? 1 : 0);
        return error * error;
    }
}
