package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.Long2IntLinkedOpenHashMap;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Text;
import org.salvedge.shop.Timeline.Result;
import org.salvedge.stats.Quantiles;
import org.salvedge.stats.ShrunkYield;

/**
 * The fixes compared by what each attempt adds: among attempts that were the set's first at one fault, gain over giving the set up less
 * parts and labour, failures charged where they arose.
 */
final class FixBook {
    private static final double LEVEL = 0.95;
    private static final double MICROS = 1e6;
    private static final double MICROS_AN_HOUR = 60e6;
    private static final int MONTHS = 12;

    private final Outcomes outcomes;
    private final History history;
    private final SetValues values;
    private final boolean byFamily;
    private final double unit;
    private final int from;
    private final Days month;
    private final int noFix;

    private final Long2IntLinkedOpenHashMap numbers = new Long2IntLinkedOpenHashMap();
    private final List<Cell> cells = new ArrayList<>();
    private final IntArrayList trialCell = new IntArrayList();
    private final IntArrayList trialLot = new IntArrayList();
    private final IntArrayList trialSaved = new IntArrayList();

    private static final class Cell {
        final int family;
        final int fault;
        final int fix;
        int attempts;
        int saved;
        int monthAttempts;
        int monthSaved;
        double parts;
        double micros;
        double beforeLabour;
        double firstMicros;
        final DoubleArrayList minutes = new DoubleArrayList();
        final DoubleArrayList increments = new DoubleArrayList();
        final IntArrayList lots = new IntArrayList();

        Cell(int family, int fault, int fix) {
            this.family = family;
            this.fault = fault;
            this.fix = fix;
        }
    }

    private FixBook(Outcomes outcomes, YearMonth month, SetValues values, boolean byFamily) {
        this.outcomes = outcomes;
        this.values = values;
        this.byFamily = byFamily;
        this.month = Days.of(month);
        history = outcomes.history();
        unit = Math.pow(10, Math.max(0, history.currency().getDefaultFractionDigits()));
        from = (int) month.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
        noFix = history.fixes().find(Fix.NONE.code());
        numbers.defaultReturnValue(-1);
    }

    /** By fault, then by what the increments are, the best fix first. */
    static List<FixLine> of(Outcomes outcomes, YearMonth month, SetValues values, boolean byFamily) {
        FixBook book = new FixBook(outcomes, month, values, byFamily);
        book.walk();
        return book.lines();
    }

    private void walk() {
        for (int set = 0; set < history.sets(); set++) {
            int start = history.attemptStart(set);
            int end = history.attemptStart(set + 1);
            for (int a = start; a < end; a++) {
                int day = history.attemptDay(a);
                Result result = outcomes.result(a);
                if (day >= from
                        && day <= month.last()
                        && history.attemptFix(a) != noFix
                        && (result == Result.PASS || result == Result.FAIL)) {
                    add(set, a, result == Result.PASS, AttemptOrder.first(history, set, a, noFix));
                }
            }
        }
    }

    private void add(int set, int a, boolean passed, boolean first) {
        int number = number(set, a);
        Cell cell = cells.get(number);
        long micros = outcomes.attemptMicros(a);
        cell.attempts++;
        cell.saved += passed ? 1 : 0;
        cell.parts += history.attemptParts(a) / unit;
        cell.micros += micros;
        if (micros > 0) {
            cell.minutes.add(micros / MICROS);
        }
        if (month.hold(history.attemptDay(a))) {
            cell.monthAttempts++;
            cell.monthSaved += passed ? 1 : 0;
        }
        trialCell.add(number);
        trialLot.add(history.setLot(set));
        trialSaved.add(passed ? 1 : 0);
        if (first) {
            double gain = (passed ? values.gain(history.setFamily(set)) : 0) - history.attemptParts(a);
            cell.beforeLabour += gain / unit;
            cell.firstMicros += micros;
            cell.increments.add((gain - outcomes.labourOf(micros)) / unit);
            cell.lots.add(history.setLot(set));
        }
    }

    private int number(int set, int a) {
        long key = (byFamily ? history.setFamily(set) : 0);
        key = (key * history.faults().size() + history.attemptFault(a))
                        * history.fixes().size()
                + history.attemptFix(a);
        int number = numbers.get(key);
        if (number < 0) {
            number = cells.size();
            numbers.put(key, number);
            cells.add(new Cell(byFamily ? history.setFamily(set) : -1, history.attemptFault(a), history.attemptFix(a)));
        }
        return number;
    }

    private List<FixLine> lines() {
        if (cells.isEmpty()) {
            return List.of();
        }
        int[] ones = new int[trialCell.size()];
        java.util.Arrays.fill(ones, 1);
        ShrunkYield shrunk = ShrunkYield.fit(
                cells.size(),
                trialCell.toIntArray(),
                trialLot.toIntArray(),
                trialSaved.toIntArray(),
                ones,
                parents(),
                LEVEL);
        List<FixLine> lines = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            lines.add(line(cells.get(c), new Range(shrunk.mean(c), shrunk.low(c), shrunk.high(c))));
        }
        lines.sort(Comparator.comparing(FixLine::fault, Text.CODE_POINTS)
                .thenComparing(FixLine::family, Text.CODE_POINTS)
                .thenComparing(l -> l.increment().known() ? -l.increment().value() : Double.MAX_VALUE)
                .thenComparing(FixLine::fix, Text.CODE_POINTS));
        return List.copyOf(lines);
    }

    /** Of each cell the fix on that fault, of each of these the fault; numbered as they are met. */
    private int[][] parents() {
        Long2IntLinkedOpenHashMap onFault = new Long2IntLinkedOpenHashMap();
        Long2IntLinkedOpenHashMap ofFault = new Long2IntLinkedOpenHashMap();
        int[] toFix = new int[cells.size()];
        IntArrayList toFault = new IntArrayList();
        for (int c = 0; c < toFix.length; c++) {
            Cell cell = cells.get(c);
            int fault = numbered(ofFault, cell.fault);
            toFix[c] = byFamily
                    ? numbered(onFault, (long) cell.fault * history.fixes().size() + cell.fix)
                    : c;
            if (toFix[c] == toFault.size()) {
                toFault.add(fault);
            }
        }
        return byFamily ? new int[][] {toFix, toFault.toIntArray()} : new int[][] {toFault.toIntArray()};
    }

    private static int numbered(Long2IntLinkedOpenHashMap numbers, long key) {
        int size = numbers.size();
        int number = numbers.getOrDefault(key, size);
        numbers.put(key, number);
        return number;
    }

    private FixLine line(Cell c, Range success) {
        int first = c.increments.size();
        return new FixLine(
                byFamily ? history.families().text(c.family) : "",
                history.faults().text(c.fault),
                history.fixes().text(c.fix),
                c.attempts,
                c.saved,
                success,
                c.minutes.isEmpty() ? Double.NaN : Quantiles.of(c.minutes.toDoubleArray(), 0.5),
                c.saved == 0 ? Double.NaN : c.micros / MICROS / c.saved,
                c.parts / c.attempts,
                first,
                first < 2 ? Range.UNDEFINED : LotMeans.mean(c.increments.toDoubleArray(), c.lots.toIntArray()),
                c.firstMicros == 0 ? Double.NaN : c.beforeLabour / (c.firstMicros / MICROS_AN_HOUR),
                c.monthAttempts,
                c.monthSaved);
    }
}
