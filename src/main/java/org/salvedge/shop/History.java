package org.salvedge.shop;

import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The shop's record as columns of whole numbers, for walks over a million sets: rows of lots, sets, attempts, exits and
 * comebacks, each counted from 0, with the rows of one set side by side. Read-only once built. Texts are numbers in the
 * dictionaries; money is minor units of the book currency; times are millionths of a minute.
 *
 * <p>A reader that has no need of a column leaves it at -1, which then takes no room. Rows of one set keep the order in which they
 * were added; {@link Timeline} puts them in order of time.
 */
public final class History extends HistoryDictionaries implements java.io.Serializable {
    /** Flag of a set: it arrived. */
    public static final int ARRIVED = 1;
    /** Flag of a set: stand, remote or another part is missing. */
    public static final int INCOMPLETE = 2;
    /** Flag of a set: it stood on the seller's manifest. */
    public static final int ON_MANIFEST = 4;

    private static final ExitKind[] EXIT_KINDS = ExitKind.values();

    private final Currency currency;
    private final List<String> labels;
    private final transient @Nullable LabelSource labelSource;

    private final LotColumns lots;
    private final SetColumns sets;
    private final AttemptColumns attempts;
    private final int[] attemptStart;
    private final ExitColumns exits;
    private final int[] exitStart;
    private final ComebackColumns comebacks;
    private final int[] comebackStart;

    History(HistoryBuilder b) {
        super(b.names);
        currency = b.currency;
        labels = b.labels;
        labelSource = b.labelSource;
        lots = b.lots;
        sets = b.sets;
        int[] rowOf = b.rowOfId();
        SetRows ofAttempts = new SetRows(b.attempts.set, rowOf, sets.id.size());
        attempts = new AttemptColumns(b.attempts, ofAttempts.order());
        attemptStart = ofAttempts.start();
        SetRows ofExits = new SetRows(b.exits.set, rowOf, sets.id.size());
        exits = new ExitColumns(b.exits, ofExits.order());
        exitStart = ofExits.start();
        SetRows ofComebacks = new SetRows(b.comebacks.set, rowOf, sets.id.size());
        comebacks = new ComebackColumns(b.comebacks, ofComebacks.order());
        comebackStart = ofComebacks.start();
    }

    private History(History from) {
        super(from.names);
        currency = from.currency;
        labels = List.of();
        labelSource = null;
        lots = from.lots;
        sets = new SetColumns();
        attempts = new AttemptColumns();
        attemptStart = new int[1];
        exits = new ExitColumns();
        exitStart = new int[1];
        comebacks = new ComebackColumns();
        comebackStart = new int[1];
    }

    /** The lots and the dictionaries alone, shared with this history. */
    public History withoutSets() {
        return new History(this);
    }

    public static HistoryBuilder builder(Currency book) {
        return new HistoryBuilder(book);
    }

    /** The book currency. */
    public Currency currency() {
        return currency;
    }

    public int lots() {
        return lots.bought.size();
    }

    public int sets() {
        return sets.id.size();
    }

    public int attempts() {
        return attempts.day.size();
    }

    public int exits() {
        return exits.day.size();
    }

    public int comebacks() {
        return comebacks.day.size();
    }

    /** The shop's label on a set; "" if labels were not read. Of a record whose labels are read when asked for, only while it is open. */
    public String label(int set) {
        if (labelSource != null) {
            return labelSource.of(sets.id.get(set));
        }
        return labels.isEmpty() ? "" : labels.get(set);
    }

    public boolean arrived(int set) {
        return (sets.flags.get(set) & ARRIVED) != 0;
    }

    public boolean incomplete(int set) {
        return (sets.flags.get(set) & INCOMPLETE) != 0;
    }

    /** Whether it stood on the seller's manifest. */
    public boolean onManifest(int set) {
        return (sets.flags.get(set) & ON_MANIFEST) != 0;
    }

    /** Number in {@link #suppliers}. */
    public int lotSupplier(int lot) {
        return lots.supplier.get(lot);
    }

    /** Epoch day. */
    public int lotBought(int lot) {
        return lots.bought.get(lot);
    }

    /** Epoch day: received, else bought. */
    public int lotArrival(int lot) {
        return lots.arrival.get(lot);
    }

    /** Landed cost, minor units of the book currency. */
    public long lotCost(int lot) {
        return lots.cost.get(lot);
    }

    /** Labour on the lot as a whole, millionths of a minute; -1 = not known. */
    public long lotMicros(int lot) {
        return lots.micros.get(lot);
    }

    /** Row of its lot. */
    public int setLot(int set) {
        return sets.lot.get(set);
    }

    /** Number in {@link #families}. */
    public int setFamily(int set) {
        return sets.family.get(set);
    }

    /** Number in {@link #makers}. */
    public int setMaker(int set) {
        return sets.maker.get(set);
    }

    /** Number in {@link #models}. */
    public int setModel(int set) {
        return sets.model.get(set);
    }

    /** Number in {@link #claims}. */
    public int setClaimed(int set) {
        return sets.claimed.get(set);
    }

    /** Millionths of an inch; -1 = not known. */
    public long setInches(int set) {
        return sets.inches.get(set);
    }

    /** Number in {@link #makers}; -1 = as the maker. */
    public int setListedMaker(int set) {
        return sets.listedMaker.get(set);
    }

    /** Number in {@link #models}; -1 = as the model. */
    public int setListedModel(int set) {
        return sets.listedModel.get(set);
    }

    /** Millionths of an inch; -1 = as the inches. */
    public long setListedInches(int set) {
        return sets.listedInches.get(set);
    }

    /** Minor units of the lot's currency; -1 = not known. */
    public long setAsking(int set) {
        return sets.asking.get(set);
    }

    /** Minor units of the book currency; -1 = not shared out. */
    public long setLanded(int set) {
        return sets.landed.get(set);
    }

    /** Epoch day. */
    public int attemptDay(int attempt) {
        return attempts.day.get(attempt);
    }

    /** Second of the day. */
    public int attemptSecond(int attempt) {
        return attempts.second.get(attempt);
    }

    /** The attempt's own number. */
    public int attemptNumber(int attempt) {
        return attempts.number.get(attempt);
    }

    /** Number in {@link #faults}. */
    public int attemptFault(int attempt) {
        return attempts.fault.get(attempt);
    }

    /** Number in {@link #fixes}. */
    public int attemptFix(int attempt) {
        return attempts.fix.get(attempt);
    }

    /** Number in {@link #technicians}; -1 = not known. */
    public int attemptTechnician(int attempt) {
        return attempts.technician.get(attempt);
    }

    /** 1, 0, or -1 for no retest. */
    public int attemptPassed(int attempt) {
        return attempts.passed.get(attempt);
    }

    /** Ordinal of {@link Grade}; -1 = none. */
    public int attemptGrade(int attempt) {
        return attempts.grade.get(attempt);
    }

    /** Millionths of a minute; -1 = not known. */
    public long attemptDiagnosisMicros(int attempt) {
        return attempts.diagnosisMicros.get(attempt);
    }

    /** Millionths of a minute; -1 = not known. */
    public long attemptFixMicros(int attempt) {
        return attempts.fixMicros.get(attempt);
    }

    /** Minor units; 0 where not known. */
    public long attemptParts(int attempt) {
        return attempts.parts.get(attempt);
    }

    /** Epoch day. */
    public int exitDay(int exit) {
        return exits.day.get(exit);
    }

    /** From 1. */
    public int exitSeq(int exit) {
        return exits.seq.get(exit);
    }

    /** Ordinal of {@link ExitKind}. */
    public int exitKind(int exit) {
        return exits.kind.get(exit);
    }

    /** 1 if the set itself went, else 0. */
    public int exitGone(int exit) {
        return exits.gone.get(exit);
    }

    /** Minor units. */
    public long exitGross(int exit) {
        return exits.gross.get(exit);
    }

    /** Fees + shipping + tax, minor units. */
    public long exitCosts(int exit) {
        return exits.costs.get(exit);
    }

    /** Millionths of a minute; -1 = not known. */
    public long exitMicros(int exit) {
        return exits.micros.get(exit);
    }

    /** Number in {@link #channels}; -1 = not known. */
    public int exitChannel(int exit) {
        return exits.channel.get(exit);
    }

    /** Ordinal of {@link Grade}; -1 = none. */
    public int exitGrade(int exit) {
        return exits.grade.get(exit);
    }

    /** Epoch day. */
    public int comebackDay(int comeback) {
        return comebacks.day.get(comeback);
    }

    /** Refund + cost, minor units. */
    public long comebackCost(int comeback) {
        return comebacks.cost.get(comeback);
    }

    /** 1 or 0. */
    public int comebackRestocked(int comeback) {
        return comebacks.restocked.get(comeback);
    }

    /** Number in {@link #faults}; -1 = not known. */
    public int comebackFault(int comeback) {
        return comebacks.fault.get(comeback);
    }

    /** Row of the set that the attempt is of; found by halving. */
    public int attemptSet(int attempt) {
        return SetRows.owner(attemptStart, attempt);
    }

    /** First attempt of a set; those of set s are rows attemptStart(s) to attemptStart(s + 1), the latter excluded. */
    public int attemptStart(int set) {
        return attemptStart[set];
    }

    /** Row of the set that the exit is of; found by halving. */
    public int exitSet(int exit) {
        return SetRows.owner(exitStart, exit);
    }

    /** First exit of a set; those of set s are rows exitStart(s) to exitStart(s + 1), the latter excluded. */
    public int exitStart(int set) {
        return exitStart[set];
    }

    /** Row of the set that the comeback is of; found by halving. */
    public int comebackSet(int comeback) {
        return SetRows.owner(comebackStart, comeback);
    }

    /** First comeback of a set; those of set s are rows comebackStart(s) to comebackStart(s + 1), the latter excluded. */
    public int comebackStart(int set) {
        return comebackStart[set];
    }

    /** Loads one set's events into a timeline and settles it; attempt i there is row attemptStart(set) + i, exits alike. */
    public void walk(int set, Timeline timeline) {
        int none = names.fixes.find(Fix.NONE.code());
        timeline.start(arrived(set), lots.arrival.get(sets.lot.get(set)));
        for (int a = attemptStart[set]; a < attemptStart[set + 1]; a++) {
            timeline.attempt(
                    attempts.day.get(a),
                    attempts.second.get(a),
                    attempts.number.get(a),
                    attempts.fix.get(a) != none,
                    attempts.passed.get(a));
        }
        for (int e = exitStart[set]; e < exitStart[set + 1]; e++) {
            timeline.exit(exits.day.get(e), exits.seq.get(e), EXIT_KINDS[exits.kind.get(e)], exits.gone.get(e) == 1);
        }
        for (int c = comebackStart[set]; c < comebackStart[set + 1]; c++) {
            timeline.comeback(comebacks.day.get(c), comebacks.restocked.get(c) == 1);
        }
        timeline.settle();
    }
}
