package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Text in CSV is no formula however the file is split, and comes back as it was. */
class FormulaGuardTest {
    private static final String ALPHABET = "''\"\";;\t\n\r,,= =-+@\uff1dab \u00a0\ufeff\u0000";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "=1 | '=1",
                "'=1 | ''=1",
                "a;=HYPERLINK(\"x\") | a;'=HYPERLINK(\"x\")",
                "a;'=1 | a;''=1",
                "a; \"=1 | a;' \"=1",
                "55\"; -5 | 55\";' -5",
                "a=1;b-2 | a=1;b-2",
                "a;b;;c | a;b;;c",
                "'quoted'; 'as is' | 'quoted'; 'as is'",
                "L0042-007 | L0042-007"
            })
    void aMarkStandsWhereAFormulaWouldBegin(String text, String shown) {
        assertThat(FormulaGuard.shown(text)).isEqualTo(shown);
        assertThat(FormulaGuard.meant(shown)).isEqualTo(text);
    }

    @Test
    void linesAndTabsOfATextBeginCellsToo() {
        assertThat(FormulaGuard.shown("a\n=1\tb\t@x")).isEqualTo("a\n'=1\tb\t'@x");
        assertThat(FormulaGuard.shown("\tx")).isEqualTo("'\tx");
        assertThat(FormulaGuard.isFormula("a;=1")).isFalse();
        assertThat(FormulaGuard.isFormula(" =1")).isTrue();
        assertThat(FormulaGuard.isFormula("")).isFalse();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void everyTextComesBackAndIsNoFormulaAtAnySeparator(long seed) {
        Random random = new Random(seed);
        for (int n = 0; n < 20_000; n++) {
            String text = text(random);
            String other = text(random);
            String shown = FormulaGuard.shown(text);
            assertThat(FormulaGuard.meant(shown)).isEqualTo(text);
            String file = quoted(shown) + "," + quoted(FormulaGuard.shown(other)) + "," + quoted(shown) + "\r\nx,"
                    + quoted(shown) + "\r\n";
            for (String separators : List.of(",", ";", "\t", ",;\t")) {
                for (String cell : cells(file, separators)) {
                    assertThat(startsFormula(cell))
                            .as("cell <%s> of <%s> split at <%s>", cell, file, separators)
                            .isFalse();
                }
            }
        }
    }

    private static String text(Random random) {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(8); i > 0; i--) {
            text.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        return text.toString();
    }

    /** By RFC 4180, only where needed. */
    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    /** Fields as a lenient program takes them: what follows a closing quote belongs to the field, a quote within one is a quote. */
    private static List<String> cells(String file, String separators) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean start = true;
        boolean open = false;
        for (int i = 0; i < file.length(); i++) {
            char c = file.charAt(i);
            if (start && c == '"') {
                open = true;
                start = false;
            } else if (open && c == '"') {
                if (i + 1 < file.length() && file.charAt(i + 1) == '"') {
                    cell.append('"');
                    i++;
                } else {
                    open = false;
                }
            } else if (!open && (c == '\r' || c == '\n' || separators.indexOf(c) >= 0)) {
                cells.add(cell.toString());
                cell.setLength(0);
                start = true;
            } else {
                cell.append(c);
                start = false;
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    private static boolean startsFormula(String cell) {
        String start = cell.replaceAll("^[\\s\\u00a0\\ufeff\\u0000]+", "");
        return !start.isEmpty() && "=+-@\uff1d".indexOf(start.charAt(0)) >= 0;
    }
}
