package org.salvedge.shop;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.util.Arrays;
import java.util.Currency;

/**
 * The shop's record as columns of whole numbers, for walks over a million sets: rows of lots, sets, attempts, exits and
 * comebacks, each counted from 0, with the rows of one set side by side. Read-only once built. Texts are numbers in the
 * dictionaries; money is minor units of the book currency; times are millionths of a minute.
 *
 * <p>A reader that has no need of a column may leave it out; asking for it then throws. Rows of one set keep the order in which
 * they were added; {@link Timeline} puts them in order of time.
 */
public final class History {
    /** Flag of a set: it arrived. */
    public static final int ARRIVED = 1;
    /** Flag of a set: stand, remote or another part is missing. */
    public static final int INCOMPLETE = 2;
    /** Flag of a set: it stood on the seller's manifest. */
    public static final int ON_MANIFEST = 4;

    private final Currency currency;
    private final Names lotNames;
    private final Names suppliers;
    private final Names families;
    private final Names makers;
    private final Names models;
    private final Names claims;
    private final Names faults;
    private final Names fixes;
    private final Names technicians;
    private final Names channels;
    private final String[] labels;

    private final int[] lotSupplier;
    private final int[] lotBought;
    private final int[] lotArrival;
    private final long[] lotCost;
    private final long[] lotMicros;
    private final int[] setLot;
    private final int[] setFamily;
    private final int[] setMaker;
    private final int[] setModel;
    private final int[] setClaimed;
    private final long[] setInches;
    private final int[] setListedMaker;
    private final int[] setListedModel;
    private final long[] setListedInches;
    private final int[] setFlags;
    private final long[] setAsking;
    private final long[] setLanded;
    private final int[] attemptDay;
    private final int[] attemptMinute;
    private final int[] attemptNumber;
    private final int[] attemptFault;
    private final int[] attemptFix;
    private final int[] attemptTechnician;
    private final int[] attemptPassed;
    private final int[] attemptGrade;
    private final long[] attemptDiagnosisMicros;
    private final long[] attemptFixMicros;
    private final long[] attemptParts;
    private final int[] exitDay;
    private final int[] exitSeq;
    private final int[] exitKind;
    private final int[] exitGone;
    private final long[] exitGross;
    private final long[] exitCosts;
    private final long[] exitMicros;
    private final int[] exitChannel;
    private final int[] exitGrade;
    private final int[] comebackDay;
    private final long[] comebackCost;
    private final int[] comebackRestocked;
    private final int[] comebackFault;
    private final int[] attemptSet;
    private final int[] attemptStart;
    private final int[] exitSet;
    private final int[] exitStart;
    private final int[] comebackSet;
    private final int[] comebackStart;

    private History(Builder b) {
        currency = b.currency;
        lotNames = b.lotNames;
        suppliers = b.suppliers;
        families = b.families;
        makers = b.makers;
        models = b.models;
        claims = b.claims;
        faults = b.faults;
        fixes = b.fixes;
        technicians = b.technicians;
        channels = b.channels;
        labels = b.labels.toArray(String[]::new);
        lotSupplier = b.lotSupplier.toIntArray();
        lotBought = b.lotBought.toIntArray();
        lotArrival = b.lotArrival.toIntArray();
        lotCost = b.lotCost.toLongArray();
        lotMicros = b.lotMicros.toLongArray();
        setLot = b.setLot.toIntArray();
        setFamily = b.setFamily.toIntArray();
        setMaker = b.setMaker.toIntArray();
        setModel = b.setModel.toIntArray();
        setClaimed = b.setClaimed.toIntArray();
        setInches = b.setInches.toLongArray();
        setListedMaker = b.setListedMaker.toIntArray();
        setListedModel = b.setListedModel.toIntArray();
        setListedInches = b.setListedInches.toLongArray();
        setFlags = b.setFlags.toIntArray();
        setAsking = b.setAsking.toLongArray();
        setLanded = b.setLanded.toLongArray();
        int sets = setLot.length;
        int[] rowOf = b.rowOfId();
        int[] attemptOf = rows(rowOf, b.attemptSet);
        attemptStart = starts(attemptOf, sets);
        int[] attemptOrder = order(attemptOf, attemptStart);
        attemptSet = pick(attemptOf, attemptOrder);
        attemptDay = pick(b.attemptDay, attemptOrder);
        attemptMinute = pick(b.attemptMinute, attemptOrder);
        attemptNumber = pick(b.attemptNumber, attemptOrder);
        attemptFault = pick(b.attemptFault, attemptOrder);
        attemptFix = pick(b.attemptFix, attemptOrder);
        attemptTechnician = pick(b.attemptTechnician, attemptOrder);
        attemptPassed = pick(b.attemptPassed, attemptOrder);
        attemptGrade = pick(b.attemptGrade, attemptOrder);
        attemptDiagnosisMicros = pick(b.attemptDiagnosisMicros, attemptOrder);
        attemptFixMicros = pick(b.attemptFixMicros, attemptOrder);
        attemptParts = pick(b.attemptParts, attemptOrder);
        int[] exitOf = rows(rowOf, b.exitSet);
        exitStart = starts(exitOf, sets);
        int[] exitOrder = order(exitOf, exitStart);
        exitSet = pick(exitOf, exitOrder);
        exitDay = pick(b.exitDay, exitOrder);
        exitSeq = pick(b.exitSeq, exitOrder);
        exitKind = pick(b.exitKind, exitOrder);
        exitGone = pick(b.exitGone, exitOrder);
        exitGross = pick(b.exitGross, exitOrder);
        exitCosts = pick(b.exitCosts, exitOrder);
        exitMicros = pick(b.exitMicros, exitOrder);
        exitChannel = pick(b.exitChannel, exitOrder);
        exitGrade = pick(b.exitGrade, exitOrder);
        int[] comebackOf = rows(rowOf, b.comebackSet);
        comebackStart = starts(comebackOf, sets);
        int[] comebackOrder = order(comebackOf, comebackStart);
        comebackSet = pick(comebackOf, comebackOrder);
        comebackDay = pick(b.comebackDay, comebackOrder);
        comebackCost = pick(b.comebackCost, comebackOrder);
        comebackRestocked = pick(b.comebackRestocked, comebackOrder);
        comebackFault = pick(b.comebackFault, comebackOrder);
    }

    private static int[] rows(int[] rowOf, IntArrayList ids) {
        int[] rows = new int[ids.size()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = rowOf[ids.getInt(i)];
        }
        return rows;
    }

    /** Rows of sets that are not there (-1) are left out. */
    private static int[] starts(int[] setOf, int sets) {
        int[] start = new int[sets + 1];
        for (int s : setOf) {
            if (s >= 0) {
                start[s + 1]++;
            }
        }
        for (int s = 0; s < sets; s++) {
            start[s + 1] += start[s];
        }
        return start;
    }

    private static int[] order(int[] setOf, int[] start) {
        int[] next = start.clone();
        int[] order = new int[start[start.length - 1]];
        for (int i = 0; i < setOf.length; i++) {
            if (setOf[i] >= 0) {
                order[next[setOf[i]]++] = i;
            }
        }
        return order;
    }

    private static int[] pick(int[] from, int[] order) {
        int[] out = new int[order.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = from[order[i]];
        }
        return out;
    }

    private static int[] pick(IntArrayList from, int[] order) {
        return from.isEmpty() ? new int[0] : pick(from.elements(), order);
    }

    private static long[] pick(LongArrayList from, int[] order) {
        if (from.isEmpty()) {
            return new long[0];
        }
        long[] elements = from.elements();
        long[] out = new long[order.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = elements[order[i]];
        }
        return out;
    }

    public static Builder builder(Currency book) {
        return new Builder(book);
    }

    /** The book currency. */
    public Currency currency() {
        return currency;
    }

    /** Dictionary of lots' names, by row. Not to be added to. */
    public Names lotNames() {
        return lotNames;
    }

    /** Dictionary of suppliers. Not to be added to. */
    public Names suppliers() {
        return suppliers;
    }

    /** Dictionary of model families. Not to be added to. */
    public Names families() {
        return families;
    }

    /** Dictionary of makers, listed ones too. Not to be added to. */
    public Names makers() {
        return makers;
    }

    /** Dictionary of model numbers, listed ones too. Not to be added to. */
    public Names models() {
        return models;
    }

    /** Dictionary of claim codes. Not to be added to. */
    public Names claims() {
        return claims;
    }

    /** Dictionary of fault codes. Not to be added to. */
    public Names faults() {
        return faults;
    }

    /** Dictionary of fix codes. Not to be added to. */
    public Names fixes() {
        return fixes;
    }

    /** Dictionary of technicians. Not to be added to. */
    public Names technicians() {
        return technicians;
    }

    /** Dictionary of sales channels. Not to be added to. */
    public Names channels() {
        return channels;
    }

    public int lots() {
        return lotBought.length;
    }

    public int sets() {
        return setLot.length;
    }

    public int attempts() {
        return attemptDay.length;
    }

    public int exits() {
        return exitDay.length;
    }

    public int comebacks() {
        return comebackDay.length;
    }

    /** The shop's label on a set; "" if labels were not read. */
    public String label(int set) {
        return labels.length == 0 ? "" : labels[set];
    }

    public boolean arrived(int set) {
        return (setFlags[set] & ARRIVED) != 0;
    }

    public boolean incomplete(int set) {
        return (setFlags[set] & INCOMPLETE) != 0;
    }

    /** Whether it stood on the seller's manifest. */
    public boolean onManifest(int set) {
        return (setFlags[set] & ON_MANIFEST) != 0;
    }

    /** Number in {@link #suppliers}. */
    public int lotSupplier(int lot) {
        return lotSupplier[lot];
    }

    /** Epoch day. */
    public int lotBought(int lot) {
        return lotBought[lot];
    }

    /** Epoch day: received, else bought. */
    public int lotArrival(int lot) {
        return lotArrival[lot];
    }

    /** Landed cost, minor units of the book currency. */
    public long lotCost(int lot) {
        return lotCost[lot];
    }

    /** Labour on the lot as a whole, millionths of a minute; -1 = not known. */
    public long lotMicros(int lot) {
        return lotMicros[lot];
    }

    /** Row of its lot. */
    public int setLot(int set) {
        return setLot[set];
    }

    /** Number in {@link #families}. */
    public int setFamily(int set) {
        return setFamily[set];
    }

    /** Number in {@link #makers}. */
    public int setMaker(int set) {
        return setMaker[set];
    }

    /** Number in {@link #models}. */
    public int setModel(int set) {
        return setModel[set];
    }

    /** Number in {@link #claims}. */
    public int setClaimed(int set) {
        return setClaimed[set];
    }

    /** Millionths of an inch; -1 = not known. */
    public long setInches(int set) {
        return setInches[set];
    }

    /** Number in {@link #makers}; -1 = as the maker. */
    public int setListedMaker(int set) {
        return setListedMaker[set];
    }

    /** Number in {@link #models}; -1 = as the model. */
    public int setListedModel(int set) {
        return setListedModel[set];
    }

    /** Millionths of an inch; -1 = as the inches. */
    public long setListedInches(int set) {
        return setListedInches[set];
    }

    /** Minor units of the lot's currency; -1 = not known. */
    public long setAsking(int set) {
        return setAsking[set];
    }

    /** Minor units of the book currency; -1 = not shared out. */
    public long setLanded(int set) {
        return setLanded[set];
    }

    /** Epoch day. */
    public int attemptDay(int attempt) {
        return attemptDay[attempt];
    }

    /** Minute of the day. */
    public int attemptMinute(int attempt) {
        return attemptMinute[attempt];
    }

    /** The attempt's own number. */
    public int attemptNumber(int attempt) {
        return attemptNumber[attempt];
    }

    /** Number in {@link #faults}. */
    public int attemptFault(int attempt) {
        return attemptFault[attempt];
    }

    /** Number in {@link #fixes}. */
    public int attemptFix(int attempt) {
        return attemptFix[attempt];
    }

    /** Number in {@link #technicians}; -1 = not known. */
    public int attemptTechnician(int attempt) {
        return attemptTechnician[attempt];
    }

    /** 1, 0, or -1 for no retest. */
    public int attemptPassed(int attempt) {
        return attemptPassed[attempt];
    }

    /** Ordinal of {@link Grade}; -1 = none. */
    public int attemptGrade(int attempt) {
        return attemptGrade[attempt];
    }

    /** Millionths of a minute; -1 = not known. */
    public long attemptDiagnosisMicros(int attempt) {
        return attemptDiagnosisMicros[attempt];
    }

    /** Millionths of a minute; -1 = not known. */
    public long attemptFixMicros(int attempt) {
        return attemptFixMicros[attempt];
    }

    /** Minor units; 0 where not known. */
    public long attemptParts(int attempt) {
        return attemptParts[attempt];
    }

    /** Epoch day. */
    public int exitDay(int exit) {
        return exitDay[exit];
    }

    /** From 1. */
    public int exitSeq(int exit) {
        return exitSeq[exit];
    }

    /** Ordinal of {@link ExitKind}. */
    public int exitKind(int exit) {
        return exitKind[exit];
    }

    /** 1 if the set itself went, else 0. */
    public int exitGone(int exit) {
        return exitGone[exit];
    }

    /** Minor units. */
    public long exitGross(int exit) {
        return exitGross[exit];
    }

    /** Fees + shipping + tax, minor units. */
    public long exitCosts(int exit) {
        return exitCosts[exit];
    }

    /** Millionths of a minute; -1 = not known. */
    public long exitMicros(int exit) {
        return exitMicros[exit];
    }

    /** Number in {@link #channels}; -1 = not known. */
    public int exitChannel(int exit) {
        return exitChannel[exit];
    }

    /** Ordinal of {@link Grade}; -1 = none. */
    public int exitGrade(int exit) {
        return exitGrade[exit];
    }

    /** Epoch day. */
    public int comebackDay(int comeback) {
        return comebackDay[comeback];
    }

    /** Refund + cost, minor units. */
    public long comebackCost(int comeback) {
        return comebackCost[comeback];
    }

    /** 1 or 0. */
    public int comebackRestocked(int comeback) {
        return comebackRestocked[comeback];
    }

    /** Number in {@link #faults}; -1 = not known. */
    public int comebackFault(int comeback) {
        return comebackFault[comeback];
    }

    /** Row of the set that the attempt is of. */
    public int attemptSet(int attempt) {
        return attemptSet[attempt];
    }

    /** First attempt of a set; those of set s are rows attemptStart(s) to attemptStart(s + 1), the latter excluded. */
    public int attemptStart(int set) {
        return attemptStart[set];
    }

    /** Row of the set that the exit is of. */
    public int exitSet(int exit) {
        return exitSet[exit];
    }

    /** First exit of a set; those of set s are rows exitStart(s) to exitStart(s + 1), the latter excluded. */
    public int exitStart(int set) {
        return exitStart[set];
    }

    /** Row of the set that the comeback is of. */
    public int comebackSet(int comeback) {
        return comebackSet[comeback];
    }

    /** First comeback of a set; those of set s are rows comebackStart(s) to comebackStart(s + 1), the latter excluded. */
    public int comebackStart(int set) {
        return comebackStart[set];
    }

    /** Loads one set's events into a timeline and settles it; attempt i there is row attemptStart(set) + i, exits alike. */
    public void walk(int set, Timeline timeline) {
        int none = fixes.find(Fix.NONE.code());
        timeline.start(arrived(set), lotArrival[setLot[set]]);
        for (int a = attemptStart[set]; a < attemptStart[set + 1]; a++) {
            timeline.attempt(
                    attemptDay[a], attemptMinute[a], attemptNumber[a], attemptFix[a] != none, attemptPassed[a]);
        }
        for (int e = exitStart[set]; e < exitStart[set + 1]; e++) {
            timeline.exit(exitDay[e], exitSeq[e], EXIT_KINDS[exitKind[e]], exitGone[e] == 1);
        }
        for (int c = comebackStart[set]; c < comebackStart[set + 1]; c++) {
            timeline.comeback(comebackDay[c], comebackRestocked[c] == 1);
        }
        timeline.settle();
    }

    private static final ExitKind[] EXIT_KINDS = ExitKind.values();

    /**
     * Collects rows. Sets have whole-number ids of the caller's choice (small, 0 or more); attempts, exits and comebacks of ids
     * that no set has are dropped when built. Attempts, exits and comebacks touch nothing that lots and sets touch, so that two
     * threads may fill the two halves, if they share no dictionary.
     */
    public static final class Builder {
        private final Currency currency;
        private final Names lotNames = new Names();
        private final Names suppliers = new Names();
        private final Names families = new Names();
        private final Names makers = new Names();
        private final Names models = new Names();
        private final Names claims = new Names();
        private final Names faults = new Names();
        private final Names fixes = new Names();
        private final Names technicians = new Names();
        private final Names channels = new Names();
        private final java.util.ArrayList<String> labels = new java.util.ArrayList<>();
        private final IntArrayList setId = new IntArrayList();
        private final IntArrayList attemptSet = new IntArrayList();
        private final IntArrayList exitSet = new IntArrayList();
        private final IntArrayList comebackSet = new IntArrayList();
        private final IntArrayList lotSupplier = new IntArrayList();
        private final IntArrayList lotBought = new IntArrayList();
        private final IntArrayList lotArrival = new IntArrayList();
        private final LongArrayList lotCost = new LongArrayList();
        private final LongArrayList lotMicros = new LongArrayList();
        private final IntArrayList setLot = new IntArrayList();
        private final IntArrayList setFamily = new IntArrayList();
        private final IntArrayList setMaker = new IntArrayList();
        private final IntArrayList setModel = new IntArrayList();
        private final IntArrayList setClaimed = new IntArrayList();
        private final LongArrayList setInches = new LongArrayList();
        private final IntArrayList setListedMaker = new IntArrayList();
        private final IntArrayList setListedModel = new IntArrayList();
        private final LongArrayList setListedInches = new LongArrayList();
        private final IntArrayList setFlags = new IntArrayList();
        private final LongArrayList setAsking = new LongArrayList();
        private final LongArrayList setLanded = new LongArrayList();
        private final IntArrayList attemptDay = new IntArrayList();
        private final IntArrayList attemptMinute = new IntArrayList();
        private final IntArrayList attemptNumber = new IntArrayList();
        private final IntArrayList attemptFault = new IntArrayList();
        private final IntArrayList attemptFix = new IntArrayList();
        private final IntArrayList attemptTechnician = new IntArrayList();
        private final IntArrayList attemptPassed = new IntArrayList();
        private final IntArrayList attemptGrade = new IntArrayList();
        private final LongArrayList attemptDiagnosisMicros = new LongArrayList();
        private final LongArrayList attemptFixMicros = new LongArrayList();
        private final LongArrayList attemptParts = new LongArrayList();
        private final IntArrayList exitDay = new IntArrayList();
        private final IntArrayList exitSeq = new IntArrayList();
        private final IntArrayList exitKind = new IntArrayList();
        private final IntArrayList exitGone = new IntArrayList();
        private final LongArrayList exitGross = new LongArrayList();
        private final LongArrayList exitCosts = new LongArrayList();
        private final LongArrayList exitMicros = new LongArrayList();
        private final IntArrayList exitChannel = new IntArrayList();
        private final IntArrayList exitGrade = new IntArrayList();
        private final IntArrayList comebackDay = new IntArrayList();
        private final LongArrayList comebackCost = new LongArrayList();
        private final IntArrayList comebackRestocked = new IntArrayList();
        private final IntArrayList comebackFault = new IntArrayList();

        private Builder(Currency currency) {
            this.currency = currency;
        }

        public Names lotNames() {
            return lotNames;
        }

        public Names suppliers() {
            return suppliers;
        }

        public Names families() {
            return families;
        }

        public Names makers() {
            return makers;
        }

        public Names models() {
            return models;
        }

        public Names claims() {
            return claims;
        }

        public Names faults() {
            return faults;
        }

        public Names fixes() {
            return fixes;
        }

        public Names technicians() {
            return technicians;
        }

        public Names channels() {
            return channels;
        }

        private int[] rowOfId() {
            int largest = -1;
            for (IntArrayList ids : new IntArrayList[] {setId, attemptSet, exitSet, comebackSet}) {
                for (int i = 0; i < ids.size(); i++) {
                    largest = Math.max(largest, ids.getInt(i));
                }
            }
            int[] row = new int[largest + 1];
            Arrays.fill(row, -1);
            for (int i = 0; i < setId.size(); i++) {
                row[setId.getInt(i)] = i;
            }
            return row;
        }

        /** Adds a lot; its row is the number of its name in {@link #lotNames}. */
        public void lot(String name, int supplier, int bought, int arrival, long cost, long micros) {
            lotNames.number(name);
            lotSupplier.add(supplier);
            lotBought.add(bought);
            lotArrival.add(arrival);
            lotCost.add(cost);
            lotMicros.add(micros);
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
            setId.add(id);
            setLot.add(lot);
            setFamily.add(family);
            setMaker.add(maker);
            setModel.add(model);
            setClaimed.add(claimed);
            setInches.add(inches);
            setListedMaker.add(listedMaker);
            setListedModel.add(listedModel);
            setListedInches.add(listedInches);
            setFlags.add(flags);
            setAsking.add(asking);
            setLanded.add(landed);
        }

        /** The label of the set added last; for all sets or for none. */
        public void label(String label) {
            labels.add(label);
        }

        /** Adds an attempt of the set with that id. */
        public void attempt(
                int setId,
                int day,
                int minute,
                int number,
                int fault,
                int fix,
                int technician,
                int passed,
                int grade,
                long diagnosisMicros,
                long fixMicros,
                long parts) {
            attemptSet.add(setId);
            attemptDay.add(day);
            attemptMinute.add(minute);
            attemptNumber.add(number);
            attemptFault.add(fault);
            attemptFix.add(fix);
            attemptTechnician.add(technician);
            attemptPassed.add(passed);
            attemptGrade.add(grade);
            attemptDiagnosisMicros.add(diagnosisMicros);
            attemptFixMicros.add(fixMicros);
            attemptParts.add(parts);
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
            exitSet.add(setId);
            exitDay.add(day);
            exitSeq.add(seq);
            exitKind.add(kind);
            exitGone.add(gone);
            exitGross.add(gross);
            exitCosts.add(costs);
            exitMicros.add(micros);
            exitChannel.add(channel);
            exitGrade.add(grade);
        }

        /** Adds a comeback of the set with that id. */
        public void comeback(int setId, int day, long cost, int restocked, int fault) {
            comebackSet.add(setId);
            comebackDay.add(day);
            comebackCost.add(cost);
            comebackRestocked.add(restocked);
            comebackFault.add(fault);
        }

        public History build() {
            return new History(this);
        }
    }
}
