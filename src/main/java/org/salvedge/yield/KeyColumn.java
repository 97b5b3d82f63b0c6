package org.salvedge.yield;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.Names;

/**
 * One key as small whole numbers: 0 = empty, below {@code size}.
 *
 * @param code number of a row of sets, or of attempts for a key of those; an attempt of -1 has the empty key
 * @param text what the number stands for
 */
record KeyColumn(int size, IntUnaryOperator code, IntFunction<String> text) {
    private static final long MICROS = 1_000_000;
    private static final long HALF = MICROS / 2;
    private static final int NO_DAY = Integer.MIN_VALUE;

    int of(int row) {
        return code.applyAsInt(row);
    }

    /** The month that a set's margin stands under is not the one that the set stands under. */
    static KeyColumn ofMargins(Key key, Outcomes outcomes) {
        if (key == Key.MONTH) {
            return months(
                    outcomes,
                    set -> outcomes.exit(set) < 0 ? NO_DAY : outcomes.history().exitDay(outcomes.exit(set)));
        }
        return of(key, outcomes);
    }

    static KeyColumn of(Key key, Outcomes outcomes) {
        History h = outcomes.history();
        return switch (key) {
            case FAMILY -> named(h.families(), h::setFamily);
            case MAKER -> named(h.makers(), h::setMaker);
            case MODEL -> named(h.models(), h::setModel);
            case SUPPLIER -> named(h.suppliers(), set -> h.lotSupplier(h.setLot(set)));
            case LOT -> named(h.lotNames(), h::setLot);
            case CLAIMED -> named(h.claims(), h::setClaimed);
            case FAULT -> named(h.faults(), attempt -> attempt < 0 ? -1 : h.attemptFault(attempt));
            case FIX -> named(h.fixes(), attempt -> attempt < 0 ? -1 : h.attemptFix(attempt));
            case TECHNICIAN -> named(h.technicians(), attempt -> attempt < 0 ? -1 : h.attemptTechnician(attempt));
            case INCHES -> inches(h);
            case GRADE -> grades(outcomes);
            case MONTH -> months(outcomes, set -> outcomes.decided(set) ? outcomes.decidedDay(set) : NO_DAY);
        };
    }

    private static KeyColumn named(Names names, IntUnaryOperator number) {
        return new KeyColumn(names.size() + 1, row -> number.applyAsInt(row) + 1, code -> names.text(code - 1));
    }

    private static KeyColumn inches(History h) {
        int largest = 0;
        for (int set = 0; set < h.sets(); set++) {
            largest = Math.max(largest, wholeInches(h.setInches(set)));
        }
        return new KeyColumn(
                largest + 2,
                set -> h.setInches(set) < 0 ? 0 : wholeInches(h.setInches(set)) + 1,
                code -> code == 0 ? "" : Integer.toString(code - 1));
    }

    private static int wholeInches(long micros) {
        return (int) ((Math.max(0, micros) + HALF) / MICROS);
    }

    private static KeyColumn grades(Outcomes o) {
        History h = o.history();
        IntUnaryOperator grade = set -> {
            int ofExit = o.exit(set) < 0 ? -1 : h.exitGrade(o.exit(set));
            return ofExit >= 0 || o.pass(set) < 0 ? ofExit : h.attemptGrade(o.pass(set));
        };
        return new KeyColumn(
                Grade.values().length + 1,
                set -> grade.applyAsInt(set) + 1,
                code -> code == 0 ? "" : Grade.values()[code - 1].code());
    }

    private static KeyColumn months(Outcomes o, IntUnaryOperator dayOfSet) {
        History h = o.history();
        int first = Integer.MAX_VALUE;
        int last = Integer.MIN_VALUE;
        for (int a = 0; a < h.attempts(); a++) {
            first = Math.min(first, h.attemptDay(a));
            last = Math.max(last, h.attemptDay(a));
        }
        for (int e = 0; e < h.exits(); e++) {
            first = Math.min(first, h.exitDay(e));
            last = Math.max(last, h.exitDay(e));
        }
        if (last < first) {
            return new KeyColumn(1, set -> 0, code -> "");
        }
        int base = first;
        int firstMonth = month(first);
        int[] monthOfDay = new int[last - first + 1];
        for (int day = first; day <= last; day++) {
            monthOfDay[day - base] = month(day) - firstMonth + 1;
        }
        return new KeyColumn(
                monthOfDay[last - base] + 1,
                set -> {
                    int day = dayOfSet.applyAsInt(set);
                    return day == NO_DAY ? 0 : monthOfDay[day - base];
                },
                code -> code == 0 ? "" : monthText(firstMonth + code - 1));
    }

    private static int month(int epochDay) {
        LocalDate day = LocalDate.ofEpochDay(epochDay);
        return day.getYear() * 12 + day.getMonthValue() - 1;
    }

    private static String monthText(int month) {
        YearMonth ym = YearMonth.of(Math.floorDiv(month, 12), Math.floorMod(month, 12) + 1);
        return String.format(Locale.ROOT, "%04d-%02d", ym.getYear(), ym.getMonthValue());
    }
}
