package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.PartKind;
import org.salvedge.worth.Donors.Pair;
import org.salvedge.worth.Donors.Patient;
import org.salvedge.worth.Donors.Supply;

class DonorsTest {
    private static Patient patient(String unit, String family, double saves, String... numbers) {
        return new Patient(unit, family, PartKind.MAIN_BOARD, List.of(numbers), saves);
    }

    @Test
    void thePairingBringsAsMuchAsTheBestOfAllPairings() {
        SplittableRandom r = new SplittableRandom(7);
        for (int round = 0; round < 300; round++) {
            List<Patient> patients = new ArrayList<>();
            List<Supply> supplies = new ArrayList<>();
            for (int i = r.nextInt(6); i >= 0; i--) {
                String[] numbers =
                        r.nextBoolean() ? new String[0] : new String[] {"N" + r.nextInt(3), "N" + r.nextInt(3)};
                patients.add(new Patient(
                        "U" + i, "F" + r.nextInt(2), PartKind.values()[r.nextInt(2)], List.of(numbers), r.nextInt(50)));
            }
            for (int j = r.nextInt(6); j >= 0; j--) {
                supplies.add(new Supply(
                        "D" + j,
                        "F" + r.nextInt(2),
                        PartKind.values()[r.nextInt(2)],
                        r.nextBoolean() ? null : "N" + r.nextInt(3),
                        r.nextInt(20)));
            }
            List<Pair> pairs = Donors.pairs(patients, supplies);
            double sum = pairs.stream().mapToDouble(Pair::gain).sum();
            assertThat(sum)
                    .isCloseTo(AllPairings.best(patients, supplies, 0, new boolean[supplies.size()]), within(1e-9));
            assertThat(pairs.stream().map(Pair::patient).distinct().count()).isEqualTo(pairs.size());
            assertThat(pairs.stream().map(p -> p.supply().source()).distinct().count())
                    .isEqualTo(pairs.size());
        }
    }

    @Test
    void partNumbersDecideWhereBothAreKnownElseTheFamily() {
        Supply numbered = new Supply("P1", "F1", PartKind.MAIN_BOARD, "N7", 0);
        assertThat(Donors.pairs(List.of(patient("U1", "F2", 10, "N7")), List.of(numbered)))
                .singleElement()
                .satisfies(p -> assertThat(p.byNumber()).isTrue());
        assertThat(Donors.pairs(List.of(patient("U1", "F1", 10, "N8")), List.of(numbered)))
                .isEmpty();
        assertThat(Donors.pairs(List.of(patient("U1", "F1", 10)), List.of(numbered)))
                .singleElement()
                .satisfies(p -> assertThat(p.byNumber()).isFalse());
    }

    @Test
    void aPartThatBringsMoreElsewhereStaysThere() {
        Supply dear = new Supply("P1", "F1", PartKind.MAIN_BOARD, null, 30);
        assertThat(Donors.pairs(List.of(patient("U1", "F1", 20)), List.of(dear)))
                .isEmpty();
    }

    @Test
    void pairsOfOneGainComeInOneOrderWhateverThatOfTheQuestion() {
        List<Patient> patients = new ArrayList<>();
        List<Supply> supplies = new ArrayList<>();
        for (PartKind kind : PartKind.values()) {
            patients.add(new Patient("U", "F", kind, List.of(), 10));
            supplies.add(new Supply("D" + kind.ordinal() % 3, "F", kind, null, 2));
        }
        for (int round = 0; round < 20; round++) {
            Collections.shuffle(patients, new Random(round));
            Collections.shuffle(supplies, new Random(round));
            assertThat(Donors.pairs(patients, supplies))
                    .extracting(p -> p.patient().kind())
                    .containsExactly(PartKind.values());
        }
    }
}
