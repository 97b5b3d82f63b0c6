package org.salvedge.worth.turn;

import java.util.List;
import org.salvedge.stats.StopRule;
import org.salvedge.worth.Route;

/** What the shop's own record teaches. */
final class LearntBench implements BenchKnowledge, java.io.Serializable {
    private final List<String> faults;
    private final FaultOdds odds;
    private final FixModel fixes;
    private final PriceBook prices;
    private final PossibleTries scores = new PossibleTries();
    private final Asked<List<String>, double[]> asked = new Asked<>();

    LearntBench(BenchRecord record, int today, double hourly) {
        faults = record.faults();
        CommonPractice common = new CommonPractice(faults, hourly);
        odds = new FaultOdds(record, common);
        fixes = new FixModel(record, common);
        prices = new PriceBook(record, today, hourly);
    }

    PriceBook prices() {
        return prices;
    }

    @Override
    public List<String> faults() {
        return faults;
    }

    @Override
    public double[] odds(BenchModel.OnBench set) {
        return asked.of(
                List.of(set.claim(), set.family(), set.supplier()),
                k -> odds.of(set.claim(), set.family(), set.supplier()));
    }

    @Override
    public double look(int fault) {
        return fixes.look(fault);
    }

    @Override
    public double parts(BenchModel.OnBench set, int fault) {
        return fixes.parts(set.family(), fault);
    }

    @Override
    public double stripped(BenchModel.OnBench set) {
        return prices.stripped(set.family(), set.inches());
    }

    @Override
    public double saving(BenchModel.OnBench set) {
        return prices.saved(set.family(), set.inches()) - prices.stripped(set.family(), set.inches());
    }

    @Override
    public StopRule rule(BenchModel.OnBench set, int fault) {
        return fixes.rule(set.family(), fault, again(set));
    }

    @Override
    public double[] success(BenchModel.OnBench set, int fault) {
        return fixes.success(set.family(), fault, again(set));
    }

    @Override
    public double[] failure(BenchModel.OnBench set, int fault) {
        return fixes.failure(set.family(), fault, again(set));
    }

    @Override
    public List<PossibleTries.Try> possible(BenchModel.OnBench set, int fault) {
        return fixes.possible(set.family(), fault, again(set), scores);
    }

    @Override
    public double saving(BenchModel.OnBench set, int draw) {
        return prices.saving(set.family(), set.inches(), scores.score(PossibleTries.PRICE, draw));
    }

    @Override
    public int tries(String fault) {
        int k = faults.indexOf(fault);
        return k < 0 ? 0 : fixes.tries(k);
    }

    @Override
    public Route otherwise(BenchModel.OnBench set, String fault) {
        return prices.otherwise(set.family(), set.inches(), fault.equals(CommonPractice.BROKEN));
    }

    private static boolean again(BenchModel.OnBench set) {
        return set.again() && set.found() != null;
    }
}
