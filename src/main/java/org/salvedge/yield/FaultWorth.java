package org.salvedge.yield;

/**
 * What a set promises once its fault is known: the share of the sets of that fault and family that were saved in the twelve months
 * before. And what it promised by its claim and supplier alone.
 */
final class FaultWorth {
    private static final double TO_FAULT = 20;
    private static final double TO_CLAIM = 10;
    private static final double TO_SUPPLIER = 10;

    /** By row of the sets found: chance to be saved given family and fault. */
    final double[] known;
    /** Chance given claim and supplier. */
    final double[] listed;

    FaultWorth(CauseData data) {
        CauseData.Found found = data.found;
        int n = found.size();
        Rates byFault = new Rates(n, TO_FAULT, TO_FAULT);
        int families = data.history.families().size();
        for (int i = 0; i < n; i++) {
            long fault = found.fault.getInt(i);
            int decided = found.decided.getInt(i);
            boolean before = decided >= 0 && decided < CauseData.NOW && found.month.getInt(i) < CauseData.NOW;
            byFault.add(before, found.saved.getInt(i), fault, fault, fault * families + found.family.getInt(i));
        }
        known = new double[n];
        Rates byClaim = new Rates(n, TO_CLAIM, TO_SUPPLIER);
        int claims = data.history.claims().size();
        for (int i = 0; i < n; i++) {
            known[i] = byFault.expected(i);
            long supplier = data.history.lotSupplier(found.lot.getInt(i));
            byClaim.add(
                    found.month.getInt(i) < CauseData.NOW,
                    known[i],
                    found.claim.getInt(i),
                    found.claim.getInt(i),
                    supplier * claims + found.claim.getInt(i));
        }
        listed = new double[n];
        for (int i = 0; i < n; i++) {
            listed[i] = byClaim.expected(i);
        }
    }
}
