package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class IntakeTest {
    private static final Currency EUR = Currency.getInstance("EUR");

    private final Intake intake = new Intake(
            new Lot(
                    new LotId("L7"),
                    "Northquay",
                    LocalDate.of(2026, 3, 1),
                    EUR,
                    null,
                    Money.zero(EUR),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null),
            new ModelBook(Map.of()));

    private void listed(String sheet, int line, int sets) {
        for (int i = 0; i < sets; i++) {
            listed(sheet, line, "Kestrel", "KX-55A", null);
        }
    }

    private void listed(
            String sheet, int line, @Nullable String maker, @Nullable String model, @Nullable String asking) {
        intake.listed(
                sheet,
                line,
                maker,
                model,
                null,
                null,
                Claim.DEAD,
                null,
                asking == null ? null : new BigDecimal(asking));
    }

    private void missing(String text) {
        Missing.parse(text).forEach(intake::missing);
    }

    private List<String> absent() {
        return intake.sets().stream()
                .filter(s -> !s.arrived())
                .map(s -> s.unit().value())
                .toList();
    }

    @Test
    void labelsCountThroughTheListWithThreeDigitsOrAsManyAsItTakes() {
        listed("A", 2, 999);
        assertThat(intake.sets().get(6).unit()).isEqualTo(new UnitId("L7-007"));
        intake.extra("ZZ-1");
        assertThat(intake.sets().get(6).unit()).isEqualTo(new UnitId("L7-0007"));
        assertThat(intake.sets().get(999).unit()).isEqualTo(new UnitId("L7-1000"));
    }

    @Test
    void whatTheListDoesNotSayIsUnknown() {
        listed("A", 2, null, " ", "12.345");
        TvSet set = intake.sets().get(0);
        assertThat(set.maker()).isEqualTo("unknown");
        assertThat(set.model()).isEqualTo("unknown");
        assertThat(set.family()).isEqualTo("unknown");
        assertThat(set.asking()).isEqualTo(Money.parse("12.35", EUR));
    }

    @Test
    void theLastSetsOfALineAreTheMissingOnes() {
        listed("A", 2, 1);
        listed("A", 3, 3);
        missing("3x2");
        assertThat(absent()).containsExactly("L7-003", "L7-004");
        missing("3");
        assertThat(absent()).containsExactly("L7-002", "L7-003", "L7-004");
    }

    @Test
    void aSheetTellsLinesApart() {
        listed("Pallet 1", 2, 1);
        listed("Pallet, 2!", 2, 1);
        missing("'Pallet, 2!'!2");
        assertThat(absent()).containsExactly("L7-002");
        missing("Pallet 1!2");
        assertThat(absent()).containsExactly("L7-001", "L7-002");
    }

    @Test
    void whatIsNotPlainIsNotGuessed() {
        listed("A", 2, 1);
        listed("B", 2, 1);
        listed("B", 3, 2);
        assertThatThrownBy(() -> missing("2"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("stands on the sheets A, B");
        assertThatThrownBy(() -> missing("3"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Say how many are missing");
        assertThatThrownBy(() -> missing("C!2"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no set on that line");
        assertThatThrownBy(() -> missing("3x3"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("only 2 of that line");
        for (String text : List.of("x2", "0", "3x0", "2,,3", "two")) {
            assertThatThrownBy(() -> missing(text)).as(text).isInstanceOf(Refused.class);
        }
        assertThat(absent()).isEmpty();
    }

    @Test
    void missingReadsSeveralWithCommas() {
        assertThat(Missing.parse("14, 20x2,Pallet 2!7 ,'It''s'!8x3"))
                .containsExactly(
                        new Missing(null, 14, null),
                        new Missing(null, 20, 2),
                        new Missing("Pallet 2", 7, null),
                        new Missing("It's", 8, 3));
    }
}
