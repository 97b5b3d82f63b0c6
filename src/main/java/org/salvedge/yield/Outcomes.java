package org.salvedge.yield;

import java.math.BigDecimal;
import java.util.stream.IntStream;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;
import org.salvedge.shop.Timeline.Result;

/**
 * What became of each set and each attempt of a history, by the counting rules: one walk, from which any number of tables are
 * counted. Rows are those of the {@link History}; money in minor units of the book currency, times in millionths of a minute.
 * Safe for threads.
 */
public final class Outcomes {
    private static final int DECIDED = 1;
    private static final int SAVED = 2;
    private static final int GONE = 4;
    private static final int ASIDE = 8;
    private static final int PASSED = 16;
    private static final Result[] RESULTS = Result.values();
    private static final int BLOCK = 1 << 14;

    private final History history;
    private final Labour labour;
    private final byte[] flags;
    private final int[] passDay;
    private final int[] pass;
    private final int[] exit;
    private final int[] deciding;
    private final int[] firstFix;
    private final long[] micros;
    private final long[] net;
    private final byte[] results;

    private Outcomes(History history, Labour labour) {
        this.history = history;
        this.labour = labour;
        int sets = history.sets();
        flags = new byte[sets];
        passDay = new int[sets];
        pass = new int[sets];
        exit = new int[sets];
        deciding = new int[sets];
        firstFix = new int[sets];
        micros = new long[sets];
        net = new long[sets];
        results = new byte[history.attempts()];
    }

    /**
     * Walks all sets, on as many processors as there are; the outcome does not depend on how many.
     *
     * @param labourRate per hour, in units of the book currency
     */
    public static Outcomes of(History history, BigDecimal labourRate) {
        Outcomes o = new Outcomes(history, new Labour(labourRate, history.currency()));
        int sets = history.sets();
        IntStream.rangeClosed(0, sets / BLOCK)
                .parallel()
                .forEach(block -> o.walk(block * BLOCK, Math.min(sets, (block + 1) * BLOCK)));
        return o;
    }

    private void walk(int from, int to) {
        Timeline timeline = new Timeline();
        for (int set = from; set < to; set++) {
            history.walk(set, timeline);
            settle(set, timeline);
        }
    }

    private void settle(int set, Timeline t) {
        boolean gone = t.state() == Timeline.State.GONE;
        flags[set] = (byte) ((t.decided() ? DECIDED : 0)
                | (t.saved() ? SAVED : 0)
                | (gone ? GONE : 0)
                | (t.aside() ? ASIDE : 0)
                | (t.state() == Timeline.State.PASSED ? PASSED : 0));
        int firstAttempt = history.attemptStart(set);
        int attempts = history.attemptStart(set + 1) - firstAttempt;
        passDay[set] = t.lastPassDay();
        pass[set] = row(firstAttempt, t.lastPass());
        exit[set] = gone ? history.exitStart(set) + t.lastExit() : -1;
        deciding[set] = row(firstAttempt, t.decidingAttempt());
        firstFix[set] = row(firstAttempt, t.firstFixAttempt());
        long time = 0;
        long money = 0;
        for (int i = 0; i < attempts; i++) {
            int a = firstAttempt + i;
            results[a] = (byte) t.result(i).ordinal();
            time += attemptMicros(a);
            money -= history.attemptParts(a);
        }
        for (int e = history.exitStart(set); e < history.exitStart(set + 1); e++) {
            time += Math.max(0, history.exitMicros(e));
            money += history.exitGross(e) - history.exitCosts(e);
        }
        for (int c = history.comebackStart(set); c < history.comebackStart(set + 1); c++) {
            money -= history.comebackCost(c);
        }
        micros[set] = time;
        net[set] = money - labour.minor(time);
    }

    private static int row(int first, int index) {
        return index < 0 ? -1 : first + index;
    }

    public History history() {
        return history;
    }

    /** Passed, or gone as sold, stripped or recycled. */
    public boolean decided(int set) {
        return (flags[set] & DECIDED) != 0;
    }

    /** Passed, or sold with a pass as its latest result before. */
    public boolean saved(int set) {
        return (flags[set] & SAVED) != 0;
    }

    public boolean gone(int set) {
        return (flags[set] & GONE) != 0;
    }

    /** Gone as returned or lost: counted beside, in no yield. */
    public boolean aside(int set) {
        return (flags[set] & ASIDE) != 0;
    }

    /** Passed and still here. */
    public boolean passed(int set) {
        return (flags[set] & PASSED) != 0;
    }

    /** Arrived and neither decided, returned nor lost. */
    public boolean inProgress(int set) {
        return history.arrived(set) && (flags[set] & (DECIDED | ASIDE)) == 0;
    }

    /** Row of the exit that a gone set left by; -1 for one that is here. */
    public int exit(int set) {
        return exit[set];
    }

    /** Row of the latest pass; -1 without one. */
    public int pass(int set) {
        return pass[set];
    }

    /** Row of the latest attempt with a fix, else of the latest attempt; -1 without one. */
    public int deciding(int set) {
        return deciding[set];
    }

    /** Row of the first attempt with a fix; -1 without one. */
    public int firstFix(int set) {
        return firstFix[set];
    }

    /** Epoch day that a decided set belongs to: of the latest pass if it is saved, else of the exit; of others not to be asked. */
    int decidedDay(int set) {
        return saved(set) ? passDay[set] : history.exitDay(exit[set]);
    }

    /** All minutes known: attempts and exits, millionths. */
    public long micros(int set) {
        return micros[set];
    }

    /** Diagnosis and fix, where known, millionths. */
    public long attemptMicros(int attempt) {
        return Math.max(0, history.attemptDiagnosisMicros(attempt)) + Math.max(0, history.attemptFixMicros(attempt));
    }

    /** Net recovery so far, minor units; final where the set has gone. */
    public long net(int set) {
        return net[set];
    }

    /** Share of the lot's landed cost, minor units; 0 where it carries none. */
    public long landed(int set) {
        return Math.max(0, history.setLanded(set));
    }

    /** Net recovery less landed cost, minor units. */
    public long margin(int set) {
        return net[set] - landed(set);
    }

    /** Labour on a set at the rate in force, minor units, half up. */
    public long labour(int set) {
        return labour.minor(micros[set]);
    }

    /** Labour on so many millionths of a minute at the rate in force, minor units, half up. */
    long labourOf(long time) {
        return labour.minor(time);
    }

    /** Labour on a lot as a whole at the rate in force, minor units. */
    long labourOfLot(int lot) {
        return labour.minor(Math.max(0, history.lotMicros(lot)));
    }

    public Result result(int attempt) {
        return RESULTS[results[attempt]];
    }

    /** How many sets arrived. */
    public int arrived() {
        return (int) IntStream.range(0, history.sets()).filter(history::arrived).count();
    }
}
