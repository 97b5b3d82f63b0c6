package org.salvedge.worth.turn;

import java.util.List;
import org.salvedge.stats.StopRule;
import org.salvedge.worth.Route;

/** What is known, or believed, of the sets on a bench. Money in units of the book currency. */
interface BenchKnowledge {
    /** Codes of the faults, in a fixed order. */
    List<String> faults();

    /** Chance of each fault of a set that is not diagnosed yet; they add up to 1. */
    double[] odds(BenchModel.OnBench set);

    /** Mean minutes until a fault is found. */
    double look(int fault);

    /** Parts expected for a try. */
    double parts(BenchModel.OnBench set, int fault);

    /** What a stripped set brings, net. */
    double stripped(BenchModel.OnBench set);

    /** What a saved set brings more than a stripped one, net. */
    double saving(BenchModel.OnBench set);

    /** Where to stop a try, minutes counted from its beginning. */
    StopRule rule(BenchModel.OnBench set, int fault);

    /** Chance of success by each of {@link TrySpan#minutes}. */
    double[] success(BenchModel.OnBench set, int fault);

    /** What the record leaves possible of a try at a fault, as many draws for each fault; none where all is known. */
    default List<PossibleTries.Try> possible(BenchModel.OnBench set, int fault) {
        return List.of();
    }

    /** What a saved set brings more than a stripped one in a draw. */
    default double saving(BenchModel.OnBench set, int draw) {
        return saving(set);
    }

    /** Chance that a hopeless try has ended by each of them. */
    double[] failure(BenchModel.OnBench set, int fault);

    /** What brings most of a set that is not fixed, with this fault found or likely. */
    default Route otherwise(BenchModel.OnBench set, String fault) {
        return Route.STRIP;
    }

    /** Tries at a fault on record. */
    default int tries(String fault) {
        return 0;
    }
}
