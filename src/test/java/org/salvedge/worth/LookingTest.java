package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;

/** Looking before the bid, in a shop that goes by what is assumed. */
class LookingTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final ShopModel MODEL =
            ShopModel.fit(History.builder(EUR).build(), DAY.minusDays(1), Settings.defaults(EUR, ZoneOffset.UTC));

    private static Question lot(int untested, int dead) {
        List<Candidate> sets = new ArrayList<>();
        for (int i = 0; i < untested + dead; i++) {
            sets.add(new Candidate(
                    "S", i + 2, "Kestrel", "KX-55A", 55.0, i < untested ? Claim.UNTESTED : Claim.DEAD, null));
        }
        return new Question(sets, null, DAY, untested + dead == 1 ? 100_000 : 20_000, 3);
    }

    /** Chance of finding a fault at the first set, out of the weights of the draws. */
    private static double chance(Question question, String fault) {
        Lineup lineup = new Lineup(MODEL.parts(), question.sets());
        Looked looked = new Looked(lineup, MODEL.parts().records.codes, Map.of(0, fault));
        Simulation sim = Simulation.run(
                MODEL.parts(), looked.kinds, looked.sets, lineup.strangers, -1, 0, 20_000, 3, looked.found, null);
        double sum = 0;
        for (double w : sim.weight) {
            sum += w / sim.weight.length;
        }
        return sum / Math.exp(1.5);
    }

    /** Over all that could be found, the means after looking average to the mean before; their spread is what {@link Looking} says. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 12})
    void meansAfterLookingAverageToTheMeanBefore(int sets) {
        Question question = lot(sets, 0);
        double all = 0;
        double mean = 0;
        double square = 0;
        for (Fault fault : Fault.BUILT_IN.keySet()) {
            double p = chance(question, fault.code());
            double after =
                    MODEL.predict(question, Map.of(0, fault.code())).recovery().mean();
            all += p;
            mean += p * after;
            square += p * after * after;
        }
        double before = MODEL.predict(question).recovery().mean();
        double sd = MODEL.predict(question).recovery().sd();
        assertThat(all).isCloseTo(1, within(0.03));
        assertThat(mean / all).isCloseTo(before, within(0.06 * sd));
        double spread = Math.sqrt(square / all - mean / all * (mean / all));
        if (sets == 1) { // of larger lots the means of rare faults are too rough to compare
            assertThat(Looking.at(MODEL, question, 1).spread()).isCloseTo(spread, within(0.2 * spread));
        }
    }

    @Test
    void brokenGlassAtSomeSetsLowersWhatTheOthersBringToo() {
        Question question = lot(20, 0);
        Map<Integer, String> bad = Map.of(0, "panel_broken", 1, "panel_broken", 2, "panel_broken", 3, "panel_broken");
        Map<Integer, String> good = Map.of(0, "none_found", 1, "none_found", 2, "none_found", 3, "none_found");
        LotWorth before = MODEL.predict(question);
        LotWorth worse = MODEL.predict(question, bad);
        LotWorth better = MODEL.predict(question, good);
        assertThat(worse.recovery().mean()).isLessThan(before.recovery().mean());
        assertThat(better.recovery().mean()).isGreaterThan(before.recovery().mean());
        assertThat(worse.lines().get(10).pSaved())
                .as("a set not looked at")
                .isLessThan(before.lines().get(10).pSaved());
        assertThat(worse.lines().get(0).pSaved()).isLessThan(0.1);
        assertThat(worse.lines().stream().mapToDouble(LineWorth::recoveryMean).sum())
                .isCloseTo(worse.recovery().mean(), within(1e-6));
    }

    @Test
    void moreLookingTellsMoreAndNeverMoreThanThereIsToKnow() {
        Question question = lot(10, 10);
        double before = 0;
        for (int k : new int[] {1, 3, 6, 12}) {
            Looking look = Looking.at(MODEL, question, k);
            assertThat(look.spread()).isGreaterThan(before);
            assertThat(look.picks().stream().mapToInt(Looking.Pick::sets).sum()).isLessThanOrEqualTo(k);
            assertThat(look.gain(look.mean())).isGreaterThanOrEqualTo(look.gain(look.mean() * 0.8));
            assertThat(look.gain(look.mean() * 0.8)).isNotNegative();
            before = look.spread();
        }
        assertThat(before).isLessThan(MODEL.predict(question).recovery().sd());
    }
}
