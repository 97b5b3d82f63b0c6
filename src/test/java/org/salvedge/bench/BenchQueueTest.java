package org.salvedge.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.salvedge.bench.BenchQueue.Candidate;
import org.salvedge.bench.BenchQueue.Place;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.worth.turn.Prospect;

class BenchQueueTest {
    private static Candidate set(String unit, String family, double gain, double minutes, double rate) {
        return new Candidate(unit, family, 3, new Prospect("backlight", .5, .4, gain, minutes, rate, 60, Map.of()));
    }

    private static List<String> units(List<Place> order) {
        return order.stream().map(p -> p.candidate().unit()).toList();
    }

    @Test
    void setsAreTakenByTheRateAtWhichATurnPaysAndThoseThatBringNothingAreLeft() {
        List<Place> order = BenchQueue.order(
                List.of(set("A", "f", 10, 30, .3), set("B", "g", 40, 30, 1.3), set("C", "h", -5, 20, -.2)), 0);
        assertThat(units(order)).containsExactly("B", "A");
    }

    @Test
    void oneOfTheSameKindComesNextOnlyWhereTheSetUpSavedLiftsIt() {
        // 15 minutes become 12: a rate of 1.0 becomes 1.25, above 1.2 and below 1.3.
        List<Candidate> above = List.of(set("A", "f", 30, 15, 2), set("B", "g", 18, 15, 1.2), set("C", "f", 15, 15, 1));
        assertThat(units(BenchQueue.order(above, 0))).containsExactly("A", "C", "B");
        List<Candidate> below = List.of(set("A", "f", 30, 15, 2), set("B", "g", 20, 15, 1.3), set("C", "f", 15, 15, 1));
        assertThat(units(BenchQueue.order(below, 0))).containsExactly("A", "B", "C");
    }

    @Test
    void hoursAreFilledInOrderAndNeverOverfilled() {
        SplittableRandom r = new SplittableRandom(3);
        for (int round = 0; round < 200; round++) {
            List<Candidate> sets = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                double rate = r.nextDouble(.1, 3);
                double minutes = r.nextDouble(5, 90);
                sets.add(set("U" + i, "F" + r.nextInt(3), rate * minutes, minutes, rate));
            }
            double hours = r.nextDouble(.5, 6);
            List<Place> order = BenchQueue.order(sets, hours);
            assertThat(order).hasSize(12);
            double used = order.stream()
                    .filter(Place::within)
                    .mapToDouble(Place::minutes)
                    .sum();
            assertThat(used).isLessThanOrEqualTo(60 * hours);
            // What was left out would not have fitted beside what came before it.
            double before = 0;
            for (Place p : order) {
                if (p.within()) {
                    before += p.minutes();
                } else {
                    assertThat(before + p.minutes()).isGreaterThan(60 * hours);
                }
            }
        }
    }

    private static final BenchLine.Codes CODES = new BenchLine.Codes(
            List.copyOf(Fault.BUILT_IN.keySet()), List.copyOf(Fix.BUILT_IN.keySet()), Fix.CONTACT_MASK);

    @Test
    void aLineIsReadByNumbersFirstLettersOrInitials() {
        BenchLine line = BenchLine.parse("1 cm y b so 8+41m p2.50 +P7 h4 \"two words", false, CODES);
        assertThat(line.fault()).isEqualTo(Fault.ROW_DRIVE);
        assertThat(line.fix()).isEqualTo(Fix.CONTACT_MASK);
        assertThat(line.passed()).isTrue();
        assertThat(line.grade()).isEqualTo(Grade.B);
        assertThat(line.safetyTested() && line.ownerDataReset()).isTrue();
        assertThat(line.minutes()).hasToString("41");
        assertThat(line.diagnosis()).hasToString("8");
        assertThat(line.parts()).isEqualByComparingTo("2.5");
        assertThat(line.partLabels()).containsExactly("p7");
        assertThat(line.note()).isEqualTo("two words");
        assertThat(BenchLine.parse(". n", true, CODES).fix()).isEqualTo(Fix.CONTACT_MASK);
        // With the fault known, a word that can only be a fault tells another one.
        assertThat(BenchLine.parse("backlight", true, CODES).fault()).isEqualTo(Fault.BACKLIGHT);
        assertThatThrownBy(() -> BenchLine.parse("p", false, CODES)).hasMessageContaining("5 power_board");
        assertThatThrownBy(() -> BenchLine.parse("99", false, CODES)).hasMessageContaining("is no fault");
    }
}
