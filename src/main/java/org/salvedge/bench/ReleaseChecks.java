package org.salvedge.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Fix;

/**
 * What must hold of a set before it is sold, beside the picture: it was tested for electrical safety, its former owner's data
 * are gone, and where a workaround is in it the buyer is told. A set that came back into stock starts anew with the first two:
 * it was opened, and somebody else's data are on it. Null = the record does not say.
 *
 * @param workaround a contact mask holds the picture, and no panel was put in since
 */
public record ReleaseChecks(
        @Nullable Boolean safetyTested, @Nullable Boolean ownerDataReset, boolean workaround) {
    /** One of the checks, by the name of its column. */
    public enum Check {
        SAFETY_TESTED("safety_tested"),
        OWNER_DATA_RESET("owner_data_reset"),
        DISCLOSED("disclosed");

        private final String column;

        Check(String column) {
            this.column = column;
        }

        public String column() {
            return column;
        }
    }

    /** What the record says of one set; attempts and comebacks in any order. */
    public static ReleaseChecks of(List<Attempt> attempts, List<Comeback> comebacks) {
        LocalDate back = comebacks.stream()
                .filter(Comeback::restocked)
                .map(Comeback::on)
                .max(Comparator.naturalOrder())
                .orElse(LocalDate.MIN);
        List<Attempt> inOrder = new ArrayList<>(attempts);
        inOrder.sort(Comparator.comparing(Attempt::startedAt).thenComparing(Attempt::number));
        Boolean safety = null;
        Boolean reset = null;
        boolean mask = false;
        for (Attempt a : inOrder) {
            if (!a.startedAt().toLocalDate().isBefore(back)) {
                safety = a.safetyTested() == null ? safety : a.safetyTested();
                reset = a.ownerDataReset() == null ? reset : a.ownerDataReset();
            }
            if (Boolean.TRUE.equals(a.passed())) {
                mask = a.fix().equals(Fix.CONTACT_MASK) || mask && !a.fix().equals(Fix.PANEL_SWAP);
            }
        }
        return new ReleaseChecks(safety, reset, mask);
    }

    /** The same with what the seller says at the sale: true where it is done now. */
    public List<Check> unmet(boolean testedNow, boolean resetNow, boolean disclosedNow) {
        List<Check> unmet = new ArrayList<>();
        if (!testedNow && !Boolean.TRUE.equals(safetyTested)) {
            unmet.add(Check.SAFETY_TESTED);
        }
        if (!resetNow && !Boolean.TRUE.equals(ownerDataReset)) {
            unmet.add(Check.OWNER_DATA_RESET);
        }
        if (workaround && !disclosedNow) {
            unmet.add(Check.DISCLOSED);
        }
        return unmet;
    }
}
