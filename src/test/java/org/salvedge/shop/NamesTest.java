package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NamesTest {
    @Test
    void aNameInOtherCapitalsIsFoundWhereItStandsInNoneOfItsOwn() {
        Names names = new Names();
        int vesper = names.number("Vesper");
        int orlan = names.number("Orlan");
        assertThat(names.findAlike("Orlan")).isEqualTo(orlan);
        assertThat(names.findAlike(" ORLAN ")).isEqualTo(orlan);
        int capitals = names.number("VESPER");
        assertThat(names.findAlike("VESPER")).isEqualTo(capitals);
        assertThat(names.findAlike("vesper")).isEqualTo(vesper);
        assertThat(names.findAlike("Kestrel")).isEqualTo(-1);
    }
}
