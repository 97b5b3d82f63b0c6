package org.salvedge.yield;

/** By lot and month: sets whose claim came true beyond what the claim and its supplier had let expect, where a claim can be true. */
final class ClaimScores {
    private static final double TO_CLAIM = 10;
    private static final double TO_SUPPLIER = 10;

    private ClaimScores() {}

    static LotScores of(CauseData data) {
        CauseData.Found found = data.found;
        int claims = data.history.claims().size();
        Rates rates = new Rates(found.size(), TO_CLAIM, TO_SUPPLIER);
        for (int i = 0; i < found.size(); i++) {
            int claim = found.claim.getInt(i);
            long supplier = data.history.lotSupplier(found.lot.getInt(i));
            boolean before = found.month.getInt(i) < CauseData.NOW;
            rates.add(before && says(data, i), holds(data, i), claim, claim, supplier * claims + claim);
        }
        LotScores scores = new LotScores();
        for (int i = 0; i < found.size(); i++) {
            if (says(data, i)) {
                double e = rates.expected(i);
                scores.add(found.lot.getInt(i), found.month.getInt(i), holds(data, i) - e, e * (1 - e), 1);
            }
        }
        LotScores.settle(scores);
        return scores;
    }

    private static boolean says(CauseData data, int row) {
        return data.found.fault.getInt(row) != data.faults && ClaimTruth.says(claim(data, row));
    }

    private static int holds(CauseData data, int row) {
        return says(data, row)
                        && ClaimTruth.holds(
                                claim(data, row), data.history.faults().text(data.found.fault.getInt(row)))
                ? 1
                : 0;
    }

    private static String claim(CauseData data, int row) {
        return data.history.claims().text(data.found.claim.getInt(row));
    }
}
