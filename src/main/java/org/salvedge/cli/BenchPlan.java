package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchQueue;
import org.salvedge.bench.UsualFix;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.Progress;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.TvSet;
import org.salvedge.worth.Route;
import org.salvedge.worth.turn.BenchModel;
import org.salvedge.worth.turn.OpenBench;
import org.salvedge.worth.turn.Prospect;
import org.salvedge.worth.turn.Stop;
import org.salvedge.worth.turn.Workload;

/** The sets on the bench with what a turn with each is expected to bring, as the record has it on a day. */
final class BenchPlan {
    /** Shops of up to so many turns are read in a moment: a plan is made for them beside other work. */
    static final int QUICKLY_READ = 50_000;

    private static final double READ = 0.6;

    private final Map<String, OpenBench> open = new HashMap<>();
    private final Map<String, TvSet> waiting = new HashMap<>();
    private final Map<BenchModel.OnBench, Prospect> asked = new HashMap<>();
    private final List<OpenBench> inOrder;
    private final BenchModel model;
    private final UsualFix usual;
    private final double shadow;

    private BenchPlan(Session session, Ledger ledger, History history, LocalDate today, double hours) {
        int day = (int) today.toEpochDay();
        model = BenchModel.fit(history, day, session.shop().settings().labourRate());
        usual = UsualFix.of(history);
        inOrder = OpenBench.of(history, day);
        inOrder.forEach(o -> open.put(o.unit(), o));
        ledger.waiting().forEach(s -> waiting.put(s.unit().value(), s));
        shadow = Workload.shadowPrice(model, history, inOrder, day, hours);
    }

    /**
     * @param asOf null = now
     * @param hours of bench time a day; 0 = as on record
     */
    static BenchPlan of(Session session, Ledger ledger, @Nullable LocalDate asOf, double hours) {
        return of(session, ledger, asOf, hours, Progress.NONE);
    }

    /** @param progress told how far reading and fitting have come */
    static BenchPlan of(Session session, Ledger ledger, @Nullable LocalDate asOf, double hours, Progress progress) {
        LocalDate today = asOf == null ? session.today() : asOf;
        History history =
                ledger.history(asOf == null ? AsOf.NOW : AsOf.endOf(asOf), Ledger.Detail.FULL, progress.part(0, READ));
        progress.step("weighing the sets on the bench", READ);
        return new BenchPlan(session, ledger, history, today, hours);
    }

    /** Price of a minute of bench time beyond labour. */
    double shadow() {
        return shadow;
    }

    /** A set on the bench; null for one that is not. */
    @Nullable
    OpenBench open(String unit) {
        return open.get(unit);
    }

    /** A set that is known to be on the bench. */
    OpenBench mustBeOpen(String unit) {
        return Objects.requireNonNull(open.get(unit), unit);
    }

    /** All sets on the bench, in the order of the record. */
    List<OpenBench> open() {
        return inOrder;
    }

    /** The gain of a turn where the part for the likely fault is at hand and costs nothing. */
    double gainWithPart(OpenBench set) {
        return model.gainWithPart(set.what(), shadow);
    }

    /** What the set brings stripped, in units of the currency. */
    double stripped(OpenBench set) {
        return model.stripped(set.what());
    }

    /** When to give up a set of the bench as it stands, with its band. */
    Stop stop(OpenBench set) {
        return model.stop(set.what(), shadow);
    }

    /** The same with this fault found after so many minutes more. */
    Stop stop(OpenBench set, Fault fault, double minutes) {
        BenchModel.OnBench w = set.what();
        boolean again = fault.code().equals(w.found()) && w.again();
        return model.stop(
                new BenchModel.OnBench(
                        w.family(), w.inches(), w.claim(), w.supplier(), fault.code(), again, w.spent() + minutes),
                fault.code(),
                shadow);
    }

    /** When to give up a set by fault found, with the usual minutes to find it. */
    Stop stopIfFound(OpenBench set, String fault) {
        return model.stop(set.what(), fault, shadow);
    }

    /** The same for a set that no work was done on yet. */
    Stop stopFromNew(OpenBench set, Fault fault) {
        BenchModel.OnBench w = set.what();
        return model.stop(
                new BenchModel.OnBench(w.family(), w.inches(), w.claim(), w.supplier(), null, false, 0),
                fault.code(),
                shadow);
    }

    /** What brings most of a set that is not fixed; by its likely fault. */
    Route otherwise(OpenBench set) {
        return model.otherwise(set.what(), prospect(set.what()).likely());
    }

    /** The same with this fault found. */
    Route otherwise(OpenBench set, Fault fault) {
        return model.otherwise(set.what(), fault.code());
    }

    Prospect prospect(BenchModel.OnBench set) {
        return asked.computeIfAbsent(set, s -> model.of(s, shadow));
    }

    /** The fix to try first on the likely fault. */
    @Nullable
    Fix fix(OpenBench set) {
        return usual.of(set.what().family(), new Fault(prospect(set.what()).likely()));
    }

    UsualFix usual() {
        return usual;
    }

    /** Sets on the bench that wait for a part, in the order of the record. */
    List<TvSet> waiting() {
        List<TvSet> sets = new ArrayList<>();
        for (OpenBench o : inOrder) {
            TvSet set = waiting.get(o.unit());
            if (set != null) {
                sets.add(set);
            }
        }
        return sets;
    }

    /** Those that do not wait and whose turn is expected to bring something, in the order to take them. */
    List<BenchQueue.Place> order(double hours) {
        List<BenchQueue.Candidate> candidates = new ArrayList<>();
        for (OpenBench o : inOrder) {
            if (!waiting.containsKey(o.unit())) {
                candidates.add(new BenchQueue.Candidate(o.unit(), o.what().family(), o.days(), prospect(o.what())));
            }
        }
        return BenchQueue.order(candidates, hours);
    }

    /** Those that do not wait and whose turn is expected to bring nothing: better stripped, or sold as they are. */
    List<OpenBench> notWorthTaking() {
        return inOrder.stream()
                .filter(o ->
                        !waiting.containsKey(o.unit()) && prospect(o.what()).gain() <= 0)
                .toList();
    }
}
