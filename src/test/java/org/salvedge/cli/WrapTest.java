package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrapTest {
    @Test
    void linesAreBrokenAtSpacesAndKeepWithinTheWidth() {
        assertThat(Wrap.at(10, "one two three four")).containsExactly("one two", "three four");
        assertThat(Wrap.at(10, "")).containsExactly("");
    }

    @Test
    void aWordThatIsTooLongStandsAlone() {
        assertThat(Wrap.at(10, "in /a/folder/of/long/name it")).containsExactly("in", "/a/folder/of/long/name", "it");
        assertThat(Wrap.at(10, "  /a/folder/of/long/name it")).containsExactly("  /a/folder/of/long/name", "it");
    }
}
