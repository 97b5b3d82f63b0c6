package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.manifest.grid.Cell;

class CountReaderTest {
    @ParameterizedTest
    @CsvSource({
        "1, 1", "2 pcs, 2", "x3, 3", "3x, 3", "1 Stk, 1", "2 Stk., 2", "2 St., 2", "4 Stück, 4", "2 units, 2",
                "3 uds., 3", "2 pièces, 2",
        "'2,0', 2", "2.00, 2", "'1,000', 1", "02, 2", "x 2, 2", "2 ×, 2", "2 pc(s), 2", "1 unidad, 1", "2 TVs, 2",
                "5 ea, 5", "2 pzas, 2",
        "Qty: 2, 2", "2 sets, 2", "(2), 2", "2 Geräte, 2", "*2, 2", "2 off, 2"
    })
    void countsAreReadWithTheirUnits(String text, int count) {
        assertThat(CountReader.read(Cell.text(text)).value()).isEqualTo(count);
    }

    @Test
    void aBlankCellIsOne() {
        assertThat(CountReader.read(Cell.BLANK).value()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-1",
                "-",
                "n/a",
                "many",
                "1.5",
                "2-3",
                "1001",
                "999999999999",
                "1e5",
                "abc",
                "?",
                "#REF!",
                "0 pcs",
                "20000"
            })
    void whatIsNoCountIsSaidSo(String text) {
        Reading<Integer> reading = CountReader.read(Cell.text(text));
        assertThat(reading.value()).as(text).isNull();
        assertThat(reading.isBad()).as(text).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "2x 55\" Kestrel, 2",
        "3 x Kestrel KX-55, 3",
        "2 pcs Kestrel, 2",
        "1 Stk. Kestrel, 1",
        "Kestrel 55\", 1",
        "55\" Kestrel, 1"
    })
    void aDescriptionMayBeginWithACount(String text, int count) {
        assertThat(CountReader.leading(text)).isEqualTo(count);
    }
}
