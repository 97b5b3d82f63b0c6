package org.salvedge.worth.study;

import java.util.List;
import java.util.Map;

/** The page on the study: what was done, with which seeds, and the tables. */
final class StudyReport {
    private StudyReport() {}

    static String markdown(List<Study.Plan> plans, Map<String, List<Judged>> judged) {
        StringBuilder out = new StringBuilder("# How far the lot estimate can be trusted\n\n");
        out.append("""
                Shops were invented whose truth is known: suppliers, model families, bench, market, each set's fault and luck. From
                the record that such a shop would hold on a day, unfinished lots and all, the estimate says what each of some lots
                on offer will bring; then the lot is lived through. Nothing in the worlds shares code or laws with the estimate:
                minutes are Weibull and gamma with technicians who give up, sale prices have heavy tails, lots are smooth or rough
                by a mixture, suppliers lie in their own ways, parts and buyers make sets wait. The **oracle** knows the shop's
                truth, not the lot's fate or luck, nor next month's prices: nobody can do better. The **plain average** is the mean of
                finished sets times the number of sets, with the spread of independent sets; **family x claim means** is the careful
                buyer's spreadsheet.

                - *in 50, 80, 90 %*: share of outcomes inside that interval. *width*: of the 80 % interval, over the oracle's.
                - *CRPS*: over the oracle's. *bias*: error of the mean, in percent of the true mean.
                - *missed*: each lot is offered at 0.8 to 1.2 times its true expected value and bought if that is not above the
                  estimate's mean; sum of max(true expected profit, 0) less the true expected profit of those bought, in percent of
                  the former.
                - *Brier*: mean squared error of P(loss) at that price, less the oracle's. *kept*: share of lots that bring at least
                  the highest bid at confidence 0.8.
                - In brackets: standard error, by leaving out one shop at a time.

                """);
        Study.Plan first = plans.get(0);
        out.append("%d shops in each world, seeds %d to %d; %d lots a shop, %d draws of the oracle a lot."
                .formatted(
                        first.shops(),
                        first.first(),
                        first.first() + first.shops() - 1,
                        first.offered(),
                        first.draws()));
        for (Study.Plan more : plans) {
            if (more.extra()) {
                out.append(" For the table of *%s*, not for that of all worlds, %d more shops, seeds %d to %d."
                        .formatted(more.world().title(), more.shops(), more.first(), more.first() + more.shops() - 1));
            }
        }
        return out.append("\n\n").append(StudyTable.markdown(judged)).toString();
    }
}
