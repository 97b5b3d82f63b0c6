package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.YearMonth;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;

/**
 * What happened at the bench and the till in a month and the twelve before it, each thing under the day on which it was known and as
 * it was known when its month ended. So a month that has just ended, whose sets have had no time to come back, is compared with
 * months seen at the same age.
 *
 * <p>Months are counted from 0; the last is the month in question.
 */
final class CauseData {
    static final int MONTHS_BEFORE = 12;
    static final int NOW = MONTHS_BEFORE;
    static final int MONTHS = MONTHS_BEFORE + 1;

    private static final int MOST_DAYS = 31;

    final History history;
    final int faults;

    /** Sets under the month in which their fault was found first, or in which they left without. */
    final Found found = new Found();
    /** Attempts with a fix that passed or failed. */
    final Trials trials = new Trials();
    /** Sales of sets that had passed. */
    final Sales sales = new Sales();

    private final int[] monthOfDay;
    private final int[] lastDay = new int[MONTHS];
    private final int firstDay;
    private final int unknown;
    private final int noFix;

    /** Columns; the fault of a set that left without is the number of faults. */
    static final class Found {
        final IntArrayList month = new IntArrayList();
        final IntArrayList family = new IntArrayList();
        final IntArrayList fault = new IntArrayList();
        final IntArrayList lot = new IntArrayList();
        final IntArrayList claim = new IntArrayList();
        /** Month in which it was first saved or given up; -1 = not by the end. */
        final IntArrayList decided = new IntArrayList();
        /** 1 if it was saved then. */
        final IntArrayList saved = new IntArrayList();

        int size() {
            return month.size();
        }

        private IntArrayList[] columns() {
            return new IntArrayList[] {month, family, fault, lot, claim, decided, saved};
        }

        /** Moves a row up. */
        void keep(int from, int to, int inMonth) {
            for (IntArrayList column : columns()) {
                column.set(to, column.getInt(from));
            }
            month.set(to, inMonth);
        }

        void cut(int size) {
            for (IntArrayList column : columns()) {
                column.size(size);
            }
        }
    }

    static final class Trials {
        final IntArrayList month = new IntArrayList();
        final IntArrayList fix = new IntArrayList();
        final IntArrayList fault = new IntArrayList();
        final IntArrayList family = new IntArrayList();
        final IntArrayList lot = new IntArrayList();
        final IntArrayList passed = new IntArrayList();

        int size() {
            return month.size();
        }
    }

    static final class Sales {
        final IntArrayList month = new IntArrayList();
        final IntArrayList family = new IntArrayList();
        /** Ordinal of the grade + 1; 0 = none. */
        final IntArrayList grade = new IntArrayList();

        final DoubleArrayList logPrice = new DoubleArrayList();

        int size() {
            return month.size();
        }
    }

    private CauseData(History history, YearMonth month) {
        this.history = history;
        faults = history.faults().size();
        unknown = history.faults().find(Fault.UNKNOWN.code());
        noFix = history.fixes().find(Fix.NONE.code());
        YearMonth first = month.minusMonths(MONTHS_BEFORE);
        firstDay = (int) first.atDay(1).toEpochDay();
        monthOfDay = new int[MONTHS * MOST_DAYS];
        java.util.Arrays.fill(monthOfDay, -1);
        for (int m = 0; m < MONTHS; m++) {
            Days days = Days.of(first.plusMonths(m));
            lastDay[m] = days.last();
            java.util.Arrays.fill(monthOfDay, days.first() - firstDay, days.last() + 1 - firstDay, m);
        }
    }

    static CauseData of(Outcomes outcomes, YearMonth month) {
        CauseData data = new CauseData(outcomes.history(), month);
        for (int set = 0; set < data.history.sets(); set++) {
            if (data.history.arrived(set)) {
                data.set(set);
            }
        }
        data.waitForBench();
        return data;
    }

    /**
     * Sets that leave without an attempt do so before the bench has come to their lot, so that a lot would look worst when it is
     * youngest: they count from the month of its first attempts on, and not at all before.
     */
    private void waitForBench() {
        int[] begun = new int[history.lots()];
        java.util.Arrays.fill(begun, MONTHS);
        for (int i = 0; i < found.size(); i++) {
            if (found.fault.getInt(i) != faults) {
                int lot = found.lot.getInt(i);
                begun[lot] = Math.min(begun[lot], found.month.getInt(i));
            }
        }
        int kept = 0;
        for (int i = 0; i < found.size(); i++) {
            int month =
                    Math.max(found.month.getInt(i), found.fault.getInt(i) == faults ? begun[found.lot.getInt(i)] : 0);
            if (month < MONTHS) {
                found.keep(i, kept++, month);
            }
        }
        found.cut(kept);
    }

    /** -1 before the first month and after the last. */
    private int month(int day) {
        int at = day - firstDay;
        return at < 0 || at >= monthOfDay.length ? -1 : monthOfDay[at];
    }

    private void set(int set) {
        int firstFound = -1;
        int firstPass = -1;
        for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
            if (history.attemptFault(a) != unknown && (firstFound < 0 || AttemptOrder.before(history, a, firstFound))) {
                firstFound = a;
            }
            if (history.attemptPassed(a) == 1 && (firstPass < 0 || AttemptOrder.before(history, a, firstPass))) {
                firstPass = a;
            }
            trial(set, a);
        }
        int firstExit = -1;
        for (int e = history.exitStart(set); e < history.exitStart(set + 1); e++) {
            if (history.exitGone(e) == 1
                    && (firstExit < 0
                            || history.exitDay(e) < history.exitDay(firstExit)
                            || history.exitDay(e) == history.exitDay(firstExit)
                                    && history.exitSeq(e) < history.exitSeq(firstExit))) {
                firstExit = e;
            }
            sale(set, e);
        }
        found(set, firstFound, firstPass, firstExit);
    }

    private void found(int set, int firstFound, int firstPass, int firstExit) {
        if (firstFound < 0 && (firstExit < 0 || aside(firstExit))) {
            return;
        }
        boolean unseen = firstFound < 0;
        int m = month(unseen ? history.exitDay(firstExit) : history.attemptDay(firstFound));
        if (m < 0) {
            return;
        }
        boolean saved =
                firstPass >= 0 && (firstExit < 0 || history.attemptDay(firstPass) <= history.exitDay(firstExit));
        boolean decided = saved || firstExit >= 0 && !aside(firstExit);
        found.month.add(m);
        found.family.add(history.setFamily(set));
        found.fault.add(unseen ? faults : history.attemptFault(firstFound));
        found.lot.add(history.setLot(set));
        found.claim.add(history.setClaimed(set));
        found.decided.add(decided ? month(saved ? history.attemptDay(firstPass) : history.exitDay(firstExit)) : -1);
        found.saved.add(saved ? 1 : 0);
    }

    private boolean aside(int exit) {
        return history.exitKind(exit) == ExitKind.RETURNED.ordinal()
                || history.exitKind(exit) == ExitKind.LOST.ordinal();
    }

    private void trial(int set, int attempt) {
        int m = month(history.attemptDay(attempt));
        if (m < 0 || history.attemptFix(attempt) == noFix) {
            return;
        }
        int passed = history.attemptPassed(attempt);
        if (passed < 0) {
            if (!wentOn(set, attempt, lastDay[m])) {
                return;
            }
            passed = 0;
        }
        trials.month.add(m);
        trials.fix.add(history.attemptFix(attempt));
        trials.fault.add(history.attemptFault(attempt));
        trials.family.add(history.setFamily(set));
        trials.lot.add(history.setLot(set));
        trials.passed.add(passed);
    }

    /** Whether a later attempt or exit tells by that day that an attempt without a retest had failed. */
    private boolean wentOn(int set, int attempt, int byDay) {
        for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
            if (history.attemptDay(a) <= byDay && AttemptOrder.before(history, attempt, a)) {
                return true;
            }
        }
        for (int e = history.exitStart(set); e < history.exitStart(set + 1); e++) {
            if (history.exitDay(e) >= history.attemptDay(attempt) && history.exitDay(e) <= byDay) {
                return true;
            }
        }
        return false;
    }

    private void sale(int set, int exit) {
        int m = month(history.exitDay(exit));
        if (m < 0 || !Sale.isSale(history, exit) || history.exitGross(exit) <= 0) {
            return;
        }
        int grade = history.exitGrade(exit);
        int pass = -1;
        for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
            if (history.attemptPassed(a) == 1
                    && history.attemptDay(a) <= history.exitDay(exit)
                    && (pass < 0 || AttemptOrder.before(history, pass, a))) {
                pass = a;
            }
        }
        if (pass < 0) {
            return;
        }
        sales.month.add(m);
        sales.family.add(history.setFamily(set));
        sales.grade.add(1 + (grade >= 0 ? grade : history.attemptGrade(pass)));
        sales.logPrice.add(Math.log((double) history.exitGross(exit)));
    }
}
