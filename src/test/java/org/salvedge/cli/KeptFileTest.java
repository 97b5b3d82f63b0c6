package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Refused;

/** The list that is kept is the list that was booked. */
class KeptFileTest {
    private static final String SHA256_OF_ABC =
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"; // FIPS 180-4

    @TempDir
    Path folder;

    @Test
    void whatWasReadIsKept() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "abc");
        KeptFile kept = KeptFile.copy(list, folder.resolve("lots"), "L1", SHA256_OF_ABC);
        kept.settle();
        assertThat(folder.resolve("lots/list.csv")).hasContent("abc");
    }

    @Test
    void aListThatChangedMeanwhileIsRefusedAndNothingIsLeft() throws IOException {
        Path list = Files.writeString(folder.resolve("list.csv"), "abd");
        assertThatThrownBy(() -> KeptFile.copy(list, folder.resolve("lots"), "L1", SHA256_OF_ABC))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("changed while it was read");
        try (Stream<Path> left = Files.list(folder.resolve("lots"))) {
            assertThat(left).isEmpty();
        }
    }
}
