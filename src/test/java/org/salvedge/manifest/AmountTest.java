package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.RowWords;

class AmountTest {
    private static Amount of(String... column) {
        Amount.Votes votes = new Amount.Votes();
        for (String text : column) {
            votes.add(Cell.text(text));
        }
        return votes.result(new RowWords());
    }

    private static BigDecimal read(Amount amount, String text) {
        return Objects.requireNonNull(amount.read(Cell.text(text)).value(), text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            120 | 120
            120.50 | 120.5
            120,50 | 120.5
            1.234,56 | 1234.56
            1,234.56 | 1234.56
            1 234,56 | 1234.56
            1''234.56 | 1234.56
            1’234.50 | 1234.5
            1.200 | 1200
            1,200 | 1200
            1.234.567 | 1234567
            $333.00 | 333
            $1026.00 | 1026
            € 449,58 | 449.58
            449,58 € | 449.58
            449,58€ | 449.58
            EUR 449,58 | 449.58
            449.58 EUR | 449.58
            £1,234 | 1234
            CHF 1''200.- | 1200
            CHF 449.50 | 449.5
            449.- | 449
            449,- | 449
            449,-- € | 449
            449.-- | 449
            Fr. 449.50 | 449.5
            US$ 449 | 449
            USD 449.00 | 449
            450 each | 450
            450/pc | 450
            450 € / Stk. | 450
            ca. 450 € | 450
            450 VB | 450
            450 € VB | 450
            1 200 € | 1200
            0,00 | 0
            0 | 0
            .50 | 0.5
            1.2E+03 | 1200
            450,00 EUR netto | 450
            450 € HT | 450
            €450.00 | 450
            450,5 | 450.5
            12.345,00 | 12345
            + 450 | 450
            450 $ | 450
            c. 450 | 450
            EUR-450 | 450
            """)
    void amountsAreReadInEveryConvention(String text, String amount) {
        assertThat(read(of(), text.replace("''", "'"))).isEqualByComparingTo(amount);
    }

    @Test
    void spacesBetweenThousandsMayBeNarrowOrHard() {
        assertThat(read(of(), "1\u202f234,56")).isEqualByComparingTo("1234.56");
        assertThat(read(of(), "1\u00a0234,56\u00a0€")).isEqualByComparingTo("1234.56");
    }

    @Test
    void aColumnThatWritesDecimalCommasWritesThousandsWithPoints() {
        Amount amount = of("449,58", "1.200", "911,55");
        assertThat(amount.style()).isEqualTo(Amount.Style.COMMA);
        assertThat(read(amount, "1.200")).isEqualByComparingTo("1200");
    }

    @Test
    void aColumnThatWritesThreeDecimalsKeepsThem() {
        Amount amount = of("1,085.250", "1,120.500", "1,099.125");
        assertThat(read(amount, "85.250")).isEqualByComparingTo("85.25");
    }

    @Test
    void anOddCellIsReadByItsOwnSignsWhereTheyLeaveNoDoubt() {
        Amount amount = of("1,234.56", "449.00", "1.511,58");
        assertThat(read(amount, "1.511,58")).isEqualByComparingTo("1511.58");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-", "n/a", "", "N/A", "--", "k.A.", "nc"})
    void noPriceIsNoProblem(String text) {
        assertThat(of().read(Cell.text(text))).isEqualTo(Reading.nothing());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "12,5O",
                "call",
                "auf Anfrage",
                "400-450",
                "-120",
                "EUR -120",
                "€-120.50",
                "2k",
                "1.5 k€",
                "99p",
                "50 pence",
                "50c",
                "(450.00)",
                "1e999",
                "inf",
                "99999999999",
                "1.2.3",
                "4S0",
                "50%",
                "12,34,56",
                "450 / 500",
                "sur demande",
                "NaN",
                "∞",
                "1,2,3.4",
                "$$$",
                "1.23.456,00"
            })
    void whatIsNoPriceIsSaidSo(String text) {
        Reading<BigDecimal> reading = of().read(Cell.text(text));
        assertThat(reading.value()).as(text).isNull();
        assertThat(reading.isBad()).as(text).isTrue();
    }

    @Test
    void theStyleIsThatOfMostCells() {
        assertThat(of("1,5", "2,5", "3.5").style()).isEqualTo(Amount.Style.COMMA);
        assertThat(of(List.of("12.50", "11.20").toArray(String[]::new)).style()).isEqualTo(Amount.Style.POINT);
        assertThat(of("1200", "1.200").style()).isEqualTo(Amount.Style.UNKNOWN);
    }

    /** 120,50- is a negative amount of many books, 120- often a price without cents: only 120,- and 120.-- are surely one. */
    @ParameterizedTest
    @ValueSource(strings = {"120-", "120,50-", "1.234,56 -", "120 EUR-", "120 € -", "120-€", "120 \u2212", "- 120-"})
    void aMinusBehindTheDigitsIsNotGuessedAt(String text) {
        Reading<BigDecimal> read = of().read(Cell.text(text));
        assertThat(read.isBad()).as(text).isTrue();
        assertThat(read.problem()).contains("minus behind it");
    }

    @ParameterizedTest
    @ValueSource(strings = {"120,-", "120.-", "120,--", "120,- €", "120-EUR", "120 - VB", "120 +/-"})
    void otherDashesBehindTheDigitsAreNoMinus(String text) {
        assertThat(read(of(), text)).isEqualByComparingTo("120");
    }
}
