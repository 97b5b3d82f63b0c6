package org.salvedge.worth.turn;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The order of the bench on invented shops: what docs/bench-study.md tells holds. */
class QueueStudyTest {
    @Test
    @Tag("study")
    void theOrderWithStopsByFaultFoundBringsWhatIsClaimed() {
        int shops = 6;
        double first = 0;
        double shortest = 0;
        double ours = 0;
        double oracle = 0;
        for (int s = 1; s <= shops; s++) {
            QueueStudy study = new QueueStudy(s);
            first += anHour(study.run(QueueStudy.Way.FCFS));
            shortest += anHour(study.run(QueueStudy.Way.SEPT_STOPS));
            ours += anHour(study.run(QueueStudy.Way.OURS));
            oracle += anHour(study.run(QueueStudy.Way.ORACLE));
        }
        assertThat(ours).isGreaterThan(1.5 * first).isGreaterThan(shortest).isGreaterThan(.85 * oracle);
    }

    private static double anHour(QueueStudy.Outcome o) {
        return o.gain() / o.hours();
    }

    /** A small shop within the build's time: ordering and stopping do not fall behind first come first served. */
    @Test
    void oneShopIsBetterOffThanFirstComeFirstServed() {
        QueueStudy study = new QueueStudy(1);
        assertThat(anHour(study.run(QueueStudy.Way.OURS))).isGreaterThan(1.2 * anHour(study.run(QueueStudy.Way.FCFS)));
    }
}
