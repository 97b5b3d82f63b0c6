package org.salvedge.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.bench.ReleaseChecks.Check;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;

/** Release checks at the retest: what is still open on a set that passed. */
final class BenchRelease {
    private BenchRelease() {}

    /** Checks not on record of a set, the disclosure to the buyer left out: that comes with the sale. */
    static List<Check> open(List<Entry> entries) {
        return ReleaseChecks.of(SetNotes.attempts(entries), SetNotes.standing(entries, Comeback.class))
                .unmet(false, false, true);
    }

    /** On standard error, after a pass; and once more that a mask is a workaround. */
    static void remind(Session session, Ledger ledger, Attempt turn) {
        if (!Boolean.TRUE.equals(turn.passed())) {
            return;
        }
        List<Check> open = open(ledger.entriesOf(turn.unit()));
        if (!open.isEmpty()) {
            session.remark(turn.unit() + ": before it is sold: "
                    + open.stream().map(Check::column).collect(Collectors.joining(", ")));
        }
    }
}
