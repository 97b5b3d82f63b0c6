package org.salvedge.yield;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.util.Arrays;
import java.util.List;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline.Result;

/** One pass over the outcomes that counts the figures of each cell of a list of keys. */
final class Count {
    private final Outcomes outcomes;
    private final History history;
    private final List<Key> keys;
    private final boolean byAttempts;
    private final KeyColumn[] ofSets;
    private final KeyColumn[] ofMargins;
    private final int noFix;
    private final int[] key;

    final Cells cells;
    final Tally tally = new Tally();
    /** One entry a trial, for the shrunk yields: its cell, its lot, 1 if it was a success. */
    final IntArrayList trialCell;

    final IntArrayList trialLot;
    final IntArrayList trialSaved;
    /** One entry an attempt with a fix whose minutes are known: its cell, millionths of a minute. */
    final IntArrayList fixCell;

    final LongArrayList fixMicros;

    private final Scope scope;

    Count(Outcomes outcomes, List<Key> keys, Scope scope) {
        this.outcomes = outcomes;
        this.scope = scope;
        this.keys = keys;
        history = outcomes.history();
        byAttempts = keys.stream().anyMatch(Key::ofAttempts);
        ofSets = keys.stream().map(k -> KeyColumn.of(k, outcomes)).toArray(KeyColumn[]::new);
        ofMargins = keys.stream().map(k -> KeyColumn.ofMargins(k, outcomes)).toArray(KeyColumn[]::new);
        noFix = history.fixes().find(Fix.NONE.code());
        key = new int[ofSets.length];
        cells = new Cells(Arrays.asList(ofSets));
        boolean all = scope == Scope.EVERYTHING; // room for all of them; a month's are few
        int trials = !all ? 0 : byAttempts ? history.attempts() : history.sets();
        trialCell = new IntArrayList(trials);
        trialLot = new IntArrayList(trials);
        trialSaved = new IntArrayList(trials);
        fixCell = new IntArrayList(all ? history.attempts() : 0);
        fixMicros = new LongArrayList(all ? history.attempts() : 0);
    }

    Count run() {
        int[] seenIn = new int[0];
        for (int set = 0; set < history.sets(); set++) {
            if (!history.arrived(set)) {
                continue;
            }
            if (scope.holds(set)) {
                if (byAttempts) {
                    seenIn = attempts(set, seenIn);
                } else {
                    set(set);
                }
            }
            if (outcomes.gone(set) && scope.holdsMargin(set)) {
                margin(set);
            }
        }
        return this;
    }

    /** Text of the k-th key of a cell. */
    String text(int k, int cell) {
        return ofSets[k].text().apply(cells.code(k, cell));
    }

    List<KeyColumn> columns() {
        return Arrays.asList(ofSets);
    }

    private int cell(int set, int attempt, KeyColumn[] columns) {
        for (int k = 0; k < key.length; k++) {
            key[k] = columns[k].of(keys.get(k).ofAttempts() ? attempt : set);
        }
        int cell = cells.number(key);
        tally.reach(cell);
        return cell;
    }

    private void set(int set) {
        int c = cell(set, -1, ofSets);
        tally.sets[c]++;
        tally.attempts[c] += history.attemptStart(set + 1) - history.attemptStart(set);
        if (outcomes.decided(set)) {
            boolean saved = outcomes.saved(set);
            tally.decided[c]++;
            tally.saved[c] += saved ? 1 : 0;
            tally.micros[c] += outcomes.micros(set);
            trial(c, set, saved);
        } else if (!outcomes.aside(set)) {
            tally.inProgress[c]++;
        }
        if (outcomes.firstFix(set) >= 0) {
            first(c, outcomes.result(outcomes.firstFix(set)));
        }
        for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
            fixMinutes(c, a);
        }
    }

    /** @param seenIn the set last seen in each cell, plus 1 */
    private int[] attempts(int set, int[] seenIn) {
        int[] seen = seenIn;
        for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
            int c = cell(set, a, ofSets);
            if (c >= seen.length) {
                seen = Arrays.copyOf(seen, tally.sets.length);
            }
            if (seen[c] != set + 1) {
                seen[c] = set + 1;
                tally.sets[c]++;
            }
            tally.attempts[c]++;
            Result result = outcomes.result(a);
            if (result == Result.PASS || result == Result.FAIL) {
                tally.decided[c]++;
                tally.saved[c] += result == Result.PASS ? 1 : 0;
                tally.micros[c] += outcomes.attemptMicros(a);
                trial(c, set, result == Result.PASS);
            } else if (result == Result.PENDING) {
                tally.inProgress[c]++;
            }
            if (a == outcomes.firstFix(set)) {
                first(c, result);
            }
            fixMinutes(c, a);
        }
        return seen;
    }

    private void first(int c, Result result) {
        if (result == Result.PASS || result == Result.FAIL) {
            tally.firstTried[c]++;
            tally.firstPassed[c] += result == Result.PASS ? 1 : 0;
        }
    }

    private void fixMinutes(int c, int attempt) {
        if (history.attemptFix(attempt) != noFix && history.attemptFixMicros(attempt) >= 0) {
            fixCell.add(c);
            fixMicros.add(history.attemptFixMicros(attempt));
        }
    }

    private void trial(int c, int set, boolean saved) {
        trialCell.add(c);
        trialLot.add(history.setLot(set));
        trialSaved.add(saved ? 1 : 0);
    }

    private void margin(int set) {
        int c = cell(set, outcomes.deciding(set), ofMargins);
        tally.gone[c]++;
        tally.margin[c] += outcomes.margin(set);
        tally.goneMicros[c] += outcomes.micros(set);
    }
}
