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
    void listsOfOneNameThatAreReceivedAtOnceAreAllKept() throws IOException {
        Path lots = folder.resolve("lots");
        Path list = Files.writeString(folder.resolve("list.csv"), "abc");
        KeptFile one = KeptFile.copy(list, lots, "L1", SHA256_OF_ABC);
        KeptFile two = KeptFile.copy(list, lots, "L2", SHA256_OF_ABC);
        KeptFile three = KeptFile.copy(list, lots, "L2", SHA256_OF_ABC);
        KeptFile four = KeptFile.copy(list, lots, "L2", SHA256_OF_ABC);
        KeptFile dropped = KeptFile.copy(list, lots, "L1", SHA256_OF_ABC);
        one.settle();
        two.settle();
        three.settle();
        four.settle();
        dropped.drop();

        assertThat(one.place()).isEqualTo(lots.resolve("list.csv")).hasContent("abc");
        assertThat(two.place()).isEqualTo(lots.resolve("L2-list.csv")).hasContent("abc");
        assertThat(three.place()).isEqualTo(lots.resolve("L2-2-list.csv")).hasContent("abc");
        assertThat(four.place()).isEqualTo(lots.resolve("L2-3-list.csv")).hasContent("abc");
        two.drop();
        try (Stream<Path> left = Files.list(lots)) {
            assertThat(left).hasSize(3);
        }
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
