package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Timeline.Impossible;
import org.salvedge.shop.Timeline.Result;
import org.salvedge.shop.Timeline.State;

/** The counting rules' reading of one set's history. A day is a number; sets arrive on day 10. */
class TimelineTest {
    private static final int PASS = 1;
    private static final int FAIL = 0;
    private static final int OPEN = -1;

    private final Timeline timeline = new Timeline();
    private int attempts;

    private TimelineTest arrived() {
        timeline.start(true, 10);
        attempts = 0;
        return this;
    }

    private TimelineTest fix(int day, int passed) {
        attempts++;
        timeline.attempt(day, attempts * 60, attempts, true, passed);
        return this;
    }

    private TimelineTest look(int day, int passed) {
        attempts++;
        timeline.attempt(day, attempts * 60, attempts, false, passed);
        return this;
    }

    private TimelineTest exit(int day, ExitKind kind) {
        timeline.exit(day, 1, kind, true);
        return this;
    }

    private TimelineTest back(int day, boolean restocked) {
        timeline.comeback(day, restocked);
        return this;
    }

    private TimelineTest settle() {
        timeline.settle();
        return this;
    }

    private void is(State state, boolean decided, boolean saved) {
        timeline.settle();
        assertThat(timeline.impossible()).isNull();
        assertThat(timeline.state()).isEqualTo(state);
        assertThat(timeline.decided()).as("decided").isEqualTo(decided);
        assertThat(timeline.saved()).as("saved").isEqualTo(saved);
    }

    private void isImpossible(Impossible why) {
        timeline.settle();
        assertThat(timeline.impossible()).isEqualTo(why);
    }

    @Test
    void aSetThatNobodyTouchedIsOnTheBench() {
        arrived().is(State.ON_BENCH, false, false);
    }

    @Test
    void aSetWhoseLatestAttemptPassedIsDecidedAndSaved() {
        arrived().fix(11, FAIL).fix(12, PASS).is(State.PASSED, true, true);
        arrived().fix(11, PASS).fix(12, FAIL).is(State.ON_BENCH, false, false);
        arrived().fix(11, PASS).look(12, OPEN).is(State.ON_BENCH, false, false);
    }

    @Test
    void anOpenAttemptIsPendingUntilSomethingFollowsIt() {
        arrived().fix(11, OPEN).settle();
        assertThat(timeline.result(0)).isEqualTo(Result.PENDING);

        arrived().fix(11, OPEN).look(12, OPEN).settle();
        assertThat(timeline.result(0)).isEqualTo(Result.FAIL);
        assertThat(timeline.result(1)).isEqualTo(Result.NONE);

        arrived().fix(11, OPEN).exit(12, ExitKind.STRIPPED).settle();
        assertThat(timeline.result(0)).isEqualTo(Result.FAIL);

        arrived().fix(11, OPEN);
        timeline.exit(12, 1, ExitKind.STRIPPED, false); // takings for a part change nothing
        timeline.settle();
        assertThat(timeline.result(0)).isEqualTo(Result.PENDING);
    }

    @Test
    void aDiagnosisWithoutAVerdictHasNoResult() {
        arrived().look(11, OPEN).look(12, PASS).look(13, FAIL).settle();

        assertThat(List.of(timeline.result(0), timeline.result(1), timeline.result(2)))
                .containsExactly(Result.NONE, Result.PASS, Result.FAIL);
    }

    @ParameterizedTest
    @CsvSource({
        "SOLD,true,true",
        "STRIPPED,true,false",
        "RECYCLED,true,false",
        "RETURNED,false,false",
        "LOST,false,false"
    })
    void howASetWentSaysWhetherItIsDecidedAndSaved(ExitKind kind, boolean decided, boolean saved) {
        arrived().fix(11, PASS).exit(12, kind).is(State.GONE, decided, saved);
        assertThat(timeline.aside()).isEqualTo(!decided);
        assertThat(timeline.lastExitKind()).isEqualTo(kind);
        assertThat(timeline.lastExitDay()).isEqualTo(12);
    }

    @Test
    void soldAsItIsIsDecidedAndNotSaved() {
        arrived().exit(12, ExitKind.SOLD).is(State.GONE, true, false);
        arrived().fix(11, FAIL).exit(12, ExitKind.SOLD).is(State.GONE, true, false);
        arrived().fix(11, PASS).fix(12, OPEN).exit(12, ExitKind.SOLD).is(State.GONE, true, false);
        // A diagnosis has no result, so that the latest result before the sale is still the pass.
        arrived().fix(11, PASS).look(12, OPEN).exit(12, ExitKind.SOLD).is(State.GONE, true, true);
    }

    @Test
    void aComebackKeepsASetSavedUnlessItIsRestockedAndLaterNotSaved() {
        arrived().fix(11, PASS).exit(12, ExitKind.SOLD).back(15, false).is(State.GONE, true, true);
        arrived().fix(11, PASS).exit(12, ExitKind.SOLD).back(15, true).is(State.ON_BENCH, false, false);
        arrived()
                .fix(11, PASS)
                .exit(12, ExitKind.SOLD)
                .back(15, true)
                .fix(16, PASS)
                .is(State.PASSED, true, true);
        arrived()
                .fix(11, PASS)
                .exit(12, ExitKind.SOLD)
                .back(15, true)
                .exit(16, ExitKind.STRIPPED)
                .is(State.GONE, true, false);
    }

    @Test
    void aSetThatDidNotArriveIsInNoYield() {
        timeline.start(false, 10);
        exit(12, ExitKind.RETURNED).settle();

        assertThat(timeline.impossible()).isNull();
        assertThat(timeline.decided()).isFalse();
        assertThat(timeline.aside()).isTrue();
    }

    @Test
    void onOneDayAComebackOfAnEarlierExitComesFirstThenAttemptsThenExits() {
        arrived();
        timeline.exit(20, 1, ExitKind.SOLD, true);
        timeline.attempt(20, 600, 1, true, PASS);
        timeline.comeback(20, true);
        timeline.exit(15, 1, ExitKind.SOLD, true);

        is(State.GONE, true, true);
        assertThat(timeline.lastExit()).isZero();
    }

    @Test
    void onOneDayAComebackOfThatDaysExitComesLast() {
        arrived().fix(20, PASS).exit(20, ExitKind.SOLD).back(20, true).is(State.ON_BENCH, false, false);
    }

    @Test
    void attemptsOfADayGoByTimeThenByNumber() {
        arrived();
        timeline.attempt(11, 700, 1, true, PASS);
        timeline.attempt(11, 600, 2, true, FAIL);
        is(State.PASSED, true, true);

        arrived();
        timeline.attempt(11, 600, 2, true, PASS);
        timeline.attempt(11, 600, 1, true, FAIL);
        is(State.PASSED, true, true);
    }

    @Test
    void exitsOfADayGoBySeq() {
        arrived();
        timeline.exit(12, 2, ExitKind.SOLD, true);
        timeline.exit(12, 1, ExitKind.STRIPPED, false);
        is(State.GONE, true, false);
        assertThat(timeline.lastExit()).isZero();
    }

    @Test
    void theDecidingAttemptIsTheLatestFixElseTheLatest() {
        arrived().look(11, OPEN).fix(12, FAIL).look(13, OPEN).settle();
        assertThat(timeline.decidingAttempt()).isEqualTo(1);
        assertThat(timeline.firstFixAttempt()).isEqualTo(1);

        arrived().look(11, OPEN).look(12, OPEN).settle();
        assertThat(timeline.decidingAttempt()).isEqualTo(1);
        assertThat(timeline.firstFixAttempt()).isEqualTo(-1);

        arrived().settle();
        assertThat(timeline.decidingAttempt()).isEqualTo(-1);
    }

    @Test
    void whatCannotHaveHappenedIsNamedWithItsEvent() {
        arrived().fix(9, PASS).isImpossible(Impossible.ATTEMPT_BEFORE_ARRIVAL);
        arrived().exit(9, ExitKind.SOLD).isImpossible(Impossible.EXIT_BEFORE_ARRIVAL);
        arrived().exit(11, ExitKind.SOLD).fix(12, PASS).isImpossible(Impossible.ATTEMPT_AFTER_EXIT);
        arrived().exit(11, ExitKind.SOLD).exit(12, ExitKind.SOLD).isImpossible(Impossible.EXIT_AFTER_EXIT);
        arrived()
                .exit(11, ExitKind.SOLD)
                .back(12, false)
                .exit(13, ExitKind.SOLD)
                .isImpossible(Impossible.EXIT_AFTER_EXIT);
        arrived().back(12, true).isImpossible(Impossible.COMEBACK_WITHOUT_SALE);
        arrived().exit(11, ExitKind.RECYCLED).back(12, true).isImpossible(Impossible.COMEBACK_WITHOUT_SALE);
        arrived().exit(11, ExitKind.SOLD).back(12, true).back(13, true).isImpossible(Impossible.COMEBACK_WITHOUT_SALE);

        assertThat(timeline.impossibleKind()).isEqualTo(Timeline.Kind.COMEBACK);
        assertThat(timeline.impossibleIndex()).isEqualTo(1);
        assertThat(Impossible.COMEBACK_WITHOUT_SALE.words()).isEqualTo("is of a set that was not sold at that time");
    }

    @ParameterizedTest
    @CsvSource({"SOLD", "STRIPPED", "RECYCLED", "LOST"})
    void aSetThatNeverArrivedCanOnlyBeCredited(ExitKind kind) {
        timeline.start(false, 10);
        exit(12, kind).isImpossible(Impossible.NOT_ARRIVED);
        timeline.start(false, 10);
        timeline.attempt(12, 1, 1, true, PASS);
        isImpossible(Impossible.NOT_ARRIVED);
    }

    private record Event(int kind, int day, int second, int number, int passed, boolean flag) {
        void into(Timeline t) {
            switch (kind) {
                case 0 -> t.attempt(day, second, number, flag, passed);
                case 1 -> t.exit(day, number, ExitKind.values()[passed + 1], flag);
                default -> t.comeback(day, flag);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void theOrderInWhichEventsAreToldDoesNotMatter(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 200; round++) {
            List<Event> events = new ArrayList<>();
            for (int i = 0; i < random.nextInt(1, 30); i++) {
                // At most one comeback a day: two of one set and day are one key.
                boolean back = i % 5 == 0;
                events.add(new Event(
                        back ? 2 : random.nextInt(2),
                        back ? 10 + i : 10 + random.nextInt(20),
                        random.nextInt(3),
                        i + 1,
                        random.nextInt(-1, 2),
                        random.nextBoolean()));
            }
            String first = told(events);
            for (int i = events.size() - 1; i > 0; i--) {
                java.util.Collections.swap(events, i, random.nextInt(i + 1));
            }
            assertThat(told(events)).isEqualTo(first);
        }
    }

    private String told(List<Event> events) {
        timeline.start(true, 10);
        events.forEach(e -> e.into(timeline));
        timeline.settle();
        StringBuilder results = new StringBuilder();
        List<Event> tried = events.stream().filter(e -> e.kind() == 0).toList();
        tried.stream()
                .sorted(java.util.Comparator.comparingInt(Event::number))
                .forEach(e -> results.append(timeline.result(tried.indexOf(e))).append(' '));
        return results + " " + timeline.state() + timeline.decided() + timeline.saved() + timeline.impossible()
                + timeline.lastExitDay() + timeline.lastPassDay();
    }
}
