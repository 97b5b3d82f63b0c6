package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.Money;

class TablePrinterTest {
    private static final Currency EUR = Currency.getInstance("EUR");

    private static Table figures() {
        return Table.of(
                        Column.of("family", "", Kind.TEXT),
                        Column.of("sets", "sets", Kind.COUNT),
                        Column.of("yield", "yield", Kind.INTERVAL),
                        Column.of("minutes", "min/fix", Kind.MINUTES),
                        Column.of("margin_total", "margin", Kind.MONEY_TOTAL),
                        Column.of("margin_per_set", "/set", Kind.MONEY_EACH).asDroppable(),
                        Column.data("gone", Kind.COUNT))
                .row("Kestrel KX-55", 1048, new Estimate(0.657, 0.514, 0.776), 41.4, money("1904.49"), 43.26, 44)
                .row("Orlan 43U", 7, Estimate.UNDEFINED, Double.NaN, money("-12.50"), null, 0)
                .note("Money in EUR.")
                .build();
    }

    private static Money money(String text) {
        return Money.parse(text, EUR);
    }

    @Test
    void numbersStandRightAndThousandsAreGrouped() {
        assertThat(new TablePrinter(Screen.plain(), EUR).print(figures())).isEqualTo("""
                                sets             yield  min/fix  margin  /set
                Kestrel KX-55  1 048  0.66 (0.51-0.78)       41   1 904  43.3
                Orlan 43U          7                                -13
                Money in EUR.
                """);
    }

    @Test
    void narrowScreensCutTextFirstAndThenLeaveOutColumnsAndSayWhich() {
        assertThat(new TablePrinter(new Screen(50, true, false), EUR).print(figures()))
                .isEqualTo("""
                             sets             yield  min/fix  margin
                Kestrel K…  1 048  0.66 (0.51-0.78)       41   1 904
                Orlan 43U       7                                -13
                Money in EUR.
                too wide to show: /set
                """);
    }

    @Test
    void noControlCharacterReachesTheTerminal() {
        Table table = Table.of(Column.of("a", "a", Kind.TEXT))
                .row("\u001b[31mred\u0007\n\u009b2J\u202eevil")
                .build();
        String out = new TablePrinter(Screen.plain(), null).print(table);
        assertThat(out).isEqualTo("a\n\uFFFD[31mred\uFFFD\uFFFD\uFFFD2J\uFFFDevil\n");
    }

    @Test
    void asciiScreensGetAsciiOnly() {
        Table table = Table.of(Column.of("a", "Größe ± 1…", Kind.TEXT), Column.screen("bar", Kind.BAR))
                .row("Käthe 日本", 0.5)
                .build();
        String out = new TablePrinter(Screen.ascii(), null).print(table);
        assertThat(out).isEqualTo("Grosse +- 1...  bar\nKathe ??        #####\n");
    }

    @Test
    void wideCharactersTakeTwoCells() {
        Table table = Table.of(Column.of("a", "", Kind.TEXT), Column.of("n", "n", Kind.COUNT))
                .row("日本", 1)
                .row("abcd", 2)
                .build();
        assertThat(new TablePrinter(Screen.plain(), null).print(table)).isEqualTo("      n\n日本  1\nabcd  2\n");
    }

    @Test
    void averagesHaveOneDigitLessThanTheirCurrency() {
        Table table =
                Table.of(Column.of("m", "m", Kind.MONEY_EACH)).row(1234.567).build();
        assertThat(List.of("JPY", "EUR", "KWD"))
                .map(code -> new TablePrinter(Screen.plain(), Currency.getInstance(code)).print(table))
                .containsExactly("    m\n1 235\n", "      m\n1 234.6\n", "       m\n1 234.57\n");
    }

    @Test
    void shapesHaveAFormInAscii() {
        double[] values = {0, 1, Double.NaN, 4, 8};
        assertThat(Shapes.spark(values, Screen.plain())).isEqualTo("▁▂ ▅█");
        assertThat(Shapes.spark(values, Screen.ascii())).isEqualTo("_. +@");
        assertThat(Shapes.bar(0.55, 4, Screen.plain())).isEqualTo("██▎");
        assertThat(Shapes.bar(0.55, 4, Screen.ascii())).isEqualTo("##");
    }

    @Test
    void whatCanBeSparedGoesBeforeKeysAreCut() {
        Table table = Table.of(
                        Column.of("family", "family", Kind.KEY),
                        Column.of("a", "min\n/fix", Kind.MINUTES).asDroppable(1),
                        Column.of("b", "first\npass", Kind.COUNT).asDroppable(2),
                        Column.of("c", "sets", Kind.COUNT))
                .row("A family with quite a long name indeed", 1.0, 2, 3)
                .build();
        assertThat(new TablePrinter(new Screen(52, true, false), null).print(table))
                .isEqualTo("""
                                                         min
                family                                  /fix  sets
                A family with quite a long name indeed     1     3
                too wide to show: first pass
                """);
        assertThat(new TablePrinter(new Screen(42, true, false), null).print(table))
                .isEqualTo("""
                family                                sets
                A family with quite a long name ind…     3
                too wide to show: min/fix, first pass
                """);
    }
}
