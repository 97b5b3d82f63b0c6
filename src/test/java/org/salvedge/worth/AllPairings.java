package org.salvedge.worth;

import java.util.List;
import org.salvedge.worth.Donors.Pair;
import org.salvedge.worth.Donors.Patient;
import org.salvedge.worth.Donors.Supply;

/** Brute force, to hold a pairing against. */
final class AllPairings {
    private AllPairings() {}

    /** The most that any pairing brings, by trying them all. */
    static double best(List<Patient> patients, List<Supply> supplies, int from, boolean[] used) {
        if (from == patients.size()) {
            return 0;
        }
        double most = best(patients, supplies, from + 1, used);
        for (int j = 0; j < supplies.size(); j++) {
            Pair pair = used[j] ? null : Donors.pair(patients.get(from), supplies.get(j));
            if (pair != null) {
                used[j] = true;
                most = Math.max(most, pair.gain() + best(patients, supplies, from + 1, used));
                used[j] = false;
            }
        }
        return most;
    }
}
