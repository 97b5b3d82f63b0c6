package org.salvedge.shop;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * One turn at the bench: diagnosis, one fix, its retest. Null means not known.
 *
 * @param number the attempt's own number, from 1
 * @param startedAt local to the shop
 * @param fix {@link Fix#NONE} = diagnosed only
 * @param diagnosisMinutes minutes spent finding the fault
 * @param fixMinutes minutes spent on the fix, whether or not it worked
 * @param partsCost book currency
 * @param passed retest result; null = no retest done: given up, or still open
 * @param soakHours hours the set ran after the fix
 * @param residualClose what is seen close up
 * @param residualViewing what is seen at the design viewing distance
 * @param grade of a set that passed
 */
public record Attempt(
        int number,
        UnitId unit,
        LocalDateTime startedAt,
        @Nullable String technician,
        Fault fault,
        Fix fix,
        @Nullable Quantity diagnosisMinutes,
        @Nullable Quantity fixMinutes,
        @Nullable Money partsCost,
        @Nullable Boolean passed,
        @Nullable Quantity soakHours,
        @Nullable Residual residualClose,
        @Nullable Residual residualViewing,
        @Nullable Grade grade,
        @Nullable Boolean safetyTested,
        @Nullable Boolean ownerDataReset,
        @Nullable String note)
        implements Fact {

    public Attempt {
        if (number < 1) {
            throw new IllegalArgumentException("attempt must be at least 1, not " + number);
        }
        Amounts.requireNotNegative("diagnosis_minutes", diagnosisMinutes);
        Amounts.requireNotNegative("fix_minutes", fixMinutes);
        Amounts.requireNotNegative("parts_cost", partsCost);
        Amounts.requireNotNegative("soak_hours", soakHours);
        if (Boolean.TRUE.equals(passed) && fix.equals(Fix.NONE) && fault.equals(Fault.UNKNOWN)) {
            throw new IllegalArgumentException(
                    "a pass needs a fix or a finding; with no fix, name the fault (none_found if it just works)");
        }
        if (grade != null && !Boolean.TRUE.equals(passed)) {
            throw new IllegalArgumentException("grade " + grade + " on a set that did not pass");
        }
    }

    /** The same with the release checks that were met since; one that was met stays met. */
    public Attempt released(boolean tested, boolean reset) {
        return new Attempt(
                number,
                unit,
                startedAt,
                technician,
                fault,
                fix,
                diagnosisMinutes,
                fixMinutes,
                partsCost,
                passed,
                soakHours,
                residualClose,
                residualViewing,
                grade,
                tested ? Boolean.TRUE : safetyTested,
                reset ? Boolean.TRUE : ownerDataReset,
                note);
    }

    /** Whether the other is the same turn but for its number, its time and who did it. */
    public boolean sameTurn(Attempt other) {
        return new Attempt(
                        other.number,
                        unit,
                        other.startedAt,
                        other.technician,
                        fault,
                        fix,
                        diagnosisMinutes,
                        fixMinutes,
                        partsCost,
                        passed,
                        soakHours,
                        residualClose,
                        residualViewing,
                        grade,
                        safetyTested,
                        ownerDataReset,
                        note)
                .equals(other);
    }
}
