package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.Claim;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Settings;

/** A record of one set, or of many sets of one family and a single one of another. */
class ThinRecordTest {
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final LocalDate AS_OF = LocalDate.of(2026, 3, 1);
    private static final int BOUGHT = (int) LocalDate.of(2025, 10, 1).toEpochDay();
    private static final String ALONE = "ZW55";

    /** @param usual sets of a usual family; beside them one set of another that sold for twice as much */
    private static History history(int usual) {
        HistoryBuilder b = History.builder(EUR);
        b.lot("L1", b.suppliers().number("Tidewell"), BOUGHT, BOUGHT + 3, 30_000, 60_000_000);
        for (int i = 0; i <= usual; i++) {
            boolean alone = i == usual;
            b.set(
                    i,
                    0,
                    b.families().number(alone ? ALONE : "KX55"),
                    b.makers().number("Kestrel"),
                    b.models().number(alone ? ALONE + "A" : "KX55A"),
                    b.claims().number("untested"),
                    55_000_000,
                    -1,
                    -1,
                    -1,
                    History.ARRIVED | History.ON_MANIFEST,
                    -1,
                    -1);
            b.attempt(
                    i,
                    BOUGHT + 10,
                    36_000,
                    i + 1,
                    b.faults().number("backlight"),
                    b.fixes().number("led_strips"),
                    b.technicians().number("Ann"),
                    1,
                    0,
                    5_000_000,
                    60_000_000,
                    2_000);
            b.exit(
                    i,
                    BOUGHT + 30,
                    1,
                    ExitKind.SOLD.ordinal(),
                    1,
                    alone ? 40_000 : 20_000,
                    3_000,
                    10_000_000,
                    b.channels().number("web"),
                    0);
        }
        return b.build();
    }

    private static double mean(History history, String model) {
        ShopModel fit = ShopModel.fit(history, AS_OF, Settings.defaults(EUR, ZoneOffset.UTC));
        Candidate set = new Candidate("lot", 2, "Kestrel", model, 55.0, new Claim("untested"), null);
        LotWorth worth =
                fit.predict(new Question(Collections.nCopies(10, set), "Tidewell", AS_OF.plusDays(1), 4_000, 1));
        for (double q : List.of(0.01, 0.1, 0.5, 0.9, 0.99)) {
            assertThat(worth.recovery().quantile(q)).isFinite();
        }
        return worth.recovery().mean();
    }

    @Test
    void aFamilyOfOneSetIsDrawnTowardsTheOthersAndNotTakenAtItsWord() {
        History history = history(40);
        double usual = mean(history, "KX55A");
        double alone = mean(history, ALONE + "A");
        assertThat(alone).isGreaterThan(usual).isLessThan(10 * (400 - 30 - 20));
    }

    @Test
    void aRecordOfOneSetIsAnswered() {
        assertThat(mean(history(0), ALONE + "A")).isFinite();
    }
}
