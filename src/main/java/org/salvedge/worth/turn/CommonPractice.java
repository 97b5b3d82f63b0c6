package org.salvedge.worth.turn;

import java.util.List;
import org.salvedge.worth.Assumed;

/** What is taken for granted where the record is silent, by the record's faults; see {@link Assumed}. */
final class CommonPractice implements java.io.Serializable {
    private final List<String> faults;
    private final double hourly;

    CommonPractice(List<String> faults, double hourly) {
        this.faults = faults;
        this.hourly = hourly;
    }

    /** Shares of the faults for a claim; they add up to 1. */
    double[] shares(String claim) {
        double[] share = new double[faults.size()];
        double usualSum = 0;
        for (String fault : faults) {
            usualSum += fault.equals(BROKEN) ? 0 : Assumed.fault(fault).share();
        }
        double broken = 1 / (1 + Math.exp(-(Assumed.BROKEN_LOGIT + Assumed.brokenLogit(claim))));
        double sum = 0;
        for (int k = 0; k < share.length; k++) {
            String fault = faults.get(k);
            share[k] = fault.equals(BROKEN)
                    ? broken
                    : (1 - broken)
                            * Assumed.share(claim, fault, Assumed.fault(fault).share() / usualSum);
            sum += share[k];
        }
        for (int k = 0; k < share.length; k++) {
            share[k] /= sum;
        }
        return share;
    }

    double saved(int fault) {
        return Assumed.fault(faults.get(fault)).saved();
    }

    double minutes(int fault) {
        return Assumed.fault(faults.get(fault)).minutes();
    }

    double parts(int fault) {
        return Assumed.fault(faults.get(fault)).partsHours() * hourly;
    }

    static final String BROKEN = "panel_broken";
}
