package org.salvedge.shop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Collects rows. Sets have whole-number ids of the caller's choice (small, 0 or more); attempts, exits and comebacks of ids
 * that no set has are dropped when built. Attempts, exits and comebacks touch nothing that lots and sets touch, so that two
 * threads may fill the two halves, if they share no dictionary.
 */
public final class HistoryBuilder extends HistoryDictionaries {
    final Currency currency;
    List<String> labels = new ArrayList<>();

    @Nullable
    LabelSource labelSource;

    final LotColumns lots = new LotColumns();
    SetColumns sets = new SetColumns();
    final AttemptColumns attempts = new AttemptColumns();
    final ExitColumns exits = new ExitColumns();
    final ComebackColumns comebacks = new ComebackColumns();

    HistoryBuilder(Currency currency) {
        super(new HistoryNames());
        this.currency = currency;
    }

    /** Row of a set by its id; -1 where no set has it. */
    int[] rowOfId() {
        int largest = -1;
        for (int i = 0; i < sets.id.size(); i++) {
            largest = Math.max(largest, sets.id.get(i));
        }
        int[] row = new int[largest + 1];
        Arrays.fill(row, -1);
        for (int i = 0; i < sets.id.size(); i++) {
            row[sets.id.get(i)] = i;
        }
        return row;
    }

    /** Adds a lot; its row is the number of its name in {@link #lotNames}. */
    public void lot(String name, int supplier, int bought, int arrival, long cost, long micros) {
        names.lotNames.number(name);
        lots.supplier.add(supplier);
        lots.bought.add(bought);
        lots.arrival.add(arrival);
        lots.cost.add(cost);
        lots.micros.add(micros);
    }

    /** Adds a set; see {@link History} for the columns. */
    public void set(
            int id,
            int lot,
            int family,
            int maker,
            int model,
            int claimed,
            long inches,
            int listedMaker,
            int listedModel,
            long listedInches,
            int flags,
            long asking,
            long landed) {
        sets.id.add(id);
        sets.lot.add(lot);
        sets.family.add(family);
        sets.maker.add(maker);
        sets.model.add(model);
        sets.claimed.add(claimed);
        sets.inches.add(inches);
        sets.listedMaker.add(listedMaker);
        sets.listedModel.add(listedModel);
        sets.listedInches.add(listedInches);
        sets.flags.add(flags);
        sets.asking.add(asking);
        sets.landed.add(landed);
    }

    /** Labels that are read when asked for, instead of {@link #label} for each set. */
    public void labels(LabelSource source) {
        labelSource = source;
    }

    /** The label of the set added last; for all sets or for none. */
    public void label(String label) {
        labels.add(label);
    }

    /**
     * Adds an attempt of the set with that id.
     *
     * @param second of the day
     */
    public void attempt(
            int setId,
            int day,
            int second,
            int number,
            int fault,
            int fix,
            int technician,
            int passed,
            int grade,
            long diagnosisMicros,
            long fixMicros,
            long parts) {
        attempts.set.add(setId);
        attempts.day.add(day);
        attempts.second.add(second);
        attempts.number.add(number);
        attempts.fault.add(fault);
        attempts.fix.add(fix);
        attempts.technician.add(technician);
        attempts.passed.add(passed);
        attempts.grade.add(grade);
        attempts.diagnosisMicros.add(diagnosisMicros);
        attempts.fixMicros.add(fixMicros);
        attempts.parts.add(parts);
    }

    /** Adds an exit of the set with that id. */
    public void exit(
            int setId,
            int day,
            int seq,
            int kind,
            int gone,
            long gross,
            long costs,
            long micros,
            int channel,
            int grade) {
        exits.set.add(setId);
        exits.day.add(day);
        exits.seq.add(seq);
        exits.kind.add(kind);
        exits.gone.add(gone);
        exits.gross.add(gross);
        exits.costs.add(costs);
        exits.micros.add(micros);
        exits.channel.add(channel);
        exits.grade.add(grade);
    }

    /** Adds a comeback of the set with that id. */
    public void comeback(int setId, int day, long cost, int restocked, int fault) {
        comebacks.set.add(setId);
        comebacks.day.add(day);
        comebacks.cost.add(cost);
        comebacks.restocked.add(restocked);
        comebacks.fault.add(fault);
    }

    /** Puts the sets in the order of lots, those of one lot by label, or by id where labels were not read. */
    public void sortSets() {
        int[] rows = SetOrder.of(sets, labels);
        if (SetOrder.isAscending(rows)) {
            return;
        }
        sets = new SetColumns(sets, rows);
        if (!labels.isEmpty()) {
            List<String> sorted = new ArrayList<>(rows.length);
            for (int row : rows) {
                sorted.add(labels.get(row));
            }
            labels = sorted;
        }
    }

    public History build() {
        return new History(this);
    }
}
