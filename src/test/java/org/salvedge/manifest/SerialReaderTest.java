package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.RowWords;

class SerialReaderTest {
    private final SerialReader reader = new SerialReader(new RowWords());

    private List<@Nullable String> read(String text, int sets) {
        return reader.read(Cell.text(text), sets).serials();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            AAA111111, BBB222222
            AAA111111; BBB222222
            AAA111111 / BBB222222
            AAA111111/BBB222222
            AAA111111 BBB222222
            AAA111111 + BBB222222
            AAA111111,BBB222222,
            """)
    void serialsOfAListGoToTheSetsInOrder(String text) {
        assertThat(read(text, 2)).containsExactly("AAA111111", "BBB222222");
    }

    @Test
    void lineBreaksPartSerials() {
        assertThat(read("AAA111111\nBBB222222\nCCC333333", 3)).containsExactly("AAA111111", "BBB222222", "CCC333333");
    }

    @ParameterizedTest
    @ValueSource(strings = {"AB/1234", "0012345678", "SN 55-17 B", "A1/22", "123.456"})
    void aSignWithinTheSerialOfOneSetBelongsToIt(String text) {
        assertThat(read(text, 1)).containsExactly(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.23457E+14", "1,23457E+14", "1.2E+17", "123456789012345000"})
    void aSerialThatLostDigitsIsToldApart(String text) {
        SerialReader.Serials serials = reader.read(Cell.text(text), 1);
        assertThat(serials.serials()).isEmpty();
        assertThat(serials.lost()).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"12E4567", "5E10", "123456789012345", "1234567890123456", "E+12345"})
    void aSerialThatOnlyLooksLikeItIsKept(String text) {
        assertThat(read(text, 1)).containsExactly(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"N/A", "-", "none", "keine", "sans", "s/n", "unleserlich", "missing", "?", "k.A.", "no label"})
    void wordsForNothingAreNoSerial(String text) {
        assertThat(read(text, 1)).isEmpty();
    }

    @Test
    void aPlaceInAListMayBeEmpty() {
        assertThat(read("AAA111111, n/a", 2)).containsExactly("AAA111111", null);
    }
}
