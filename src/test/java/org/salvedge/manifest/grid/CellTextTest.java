package org.salvedge.manifest.grid;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellTextTest {
    /** ECMA-376 Part 1, 22.9.2.19: the underscore of a text that looks like an escape is itself escaped. */
    @ParameterizedTest
    @CsvSource({
        "_x0041_bc, Abc",
        "ab_x0063_, abc",
        "_x005F_x0008_, _x0008_",
        "_x00e9_t_x00E9_, été",
        "_x41_, _x41_",
        "_xZZZZ_, _xZZZZ_",
        "a_x004, a_x004",
        "_x_x0041_, _xA"
    })
    void escapesOfAWorkbookAreUndone(String stored, String meant) {
        assertThat(CellText.unescaped(stored)).isEqualTo(meant);
    }
}
