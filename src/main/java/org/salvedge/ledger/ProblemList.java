package org.salvedge.ledger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;

/** Problems of a package: all are counted, the first of each file are kept. */
final class ProblemList {
    private static final int KEPT_A_FILE = 100;

    private final List<Problem> kept = new ArrayList<>();
    private final Map<String, Integer> ofFile = new HashMap<>();
    private long count;

    void add(Problem problem) {
        count++;
        if (ofFile.merge(problem.file(), 1, Integer::sum) <= KEPT_A_FILE) {
            kept.add(problem);
        }
    }

    void add(String inFile, long row, @Nullable String column, @Nullable String found, String problem, String advice) {
        add(new Problem(inFile, null, (int) row, column, found, problem, advice));
    }

    boolean isEmpty() {
        return count == 0;
    }

    long count() {
        return count;
    }

    /** @throws Refused if there are any */
    void refuse(String whole) {
        if (count == 0) {
            return;
        }
        String more = count > kept.size() ? "; the first " + kept.size() + " are listed" : "";
        throw new Refused(whole + " was not taken: " + count + (count == 1 ? " problem" : " problems") + more, kept);
    }
}
