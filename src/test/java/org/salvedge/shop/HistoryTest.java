package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HistoryTest {
    private static HistoryBuilder threeSets() {
        HistoryBuilder b = History.builder(Facts.EUR);
        b.lot("L1", 0, 10, 10, 100, -1);
        b.lot("L2", 0, 11, 12, 100, -1);
        b.set(7, 1, 0, 0, 0, 0, -1, -1, -1, -1, History.ARRIVED, -1, 5);
        b.label("L2-1");
        b.set(9, 0, 0, 0, 0, 0, -1, -1, -1, -1, History.ARRIVED, -1, 6);
        b.label("L1-2");
        b.set(3, 0, 0, 0, 0, 0, 55_000_000, -1, -1, -1, History.ARRIVED, -1, 7);
        b.label("L1-1");
        b.attempt(3, 20, 600, 1, 0, 0, -1, 1, -1, 5, 6, 0);
        b.attempt(4, 20, 600, 2, 0, 0, -1, 1, -1, 5, 6, 0);
        b.attempt(7, 21, 600, 3, 0, 0, -1, 0, -1, 5, 6, 0);
        b.attempt(3, 19, 600, 4, 0, 0, -1, 1, -1, 5, 6, 0);
        return b;
    }

    @Test
    void rowsOfOneSetStandSideBySideInTheOrderTheyWereAdded() {
        History h = threeSets().build();

        assertThat(h.attempts()).isEqualTo(3); // no set has the id 4
        assertThat(h.attemptStart(0)).isZero();
        assertThat(h.attemptStart(1)).isEqualTo(1);
        assertThat(h.attemptStart(2)).isEqualTo(1);
        assertThat(h.attemptNumber(0)).isEqualTo(3);
        assertThat(h.attemptSet(0)).isZero();
        assertThat(h.attemptNumber(1)).isEqualTo(1);
        assertThat(h.attemptNumber(2)).isEqualTo(4);
        assertThat(h.attemptSet(2)).isEqualTo(2);
    }

    @Test
    void sortedSetsStandByLotThenLabel() {
        HistoryBuilder b = threeSets();
        b.sortSets();
        History h = b.build();

        assertThat(h.label(0)).isEqualTo("L1-1");
        assertThat(h.label(1)).isEqualTo("L1-2");
        assertThat(h.label(2)).isEqualTo("L2-1");
        assertThat(h.setInches(0)).isEqualTo(55_000_000);
        assertThat(h.setInches(1)).isEqualTo(-1);
        assertThat(h.setLanded(2)).isEqualTo(5);
        assertThat(h.attemptSet(0)).isZero();
        assertThat(h.attemptSet(2)).isEqualTo(2);
    }
}
