package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Release checks at the sale. */
class ReleaseTest {
    private TestShop shop;

    @BeforeEach
    void open(@TempDir Path folder) {
        shop = TestShop.withLot(folder);
        shop.run("attempt", "001", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
    }

    @Test
    void aSaleWithoutThemIsRefusedWhereNobodyCanBeAsked() {
        assertThat(shop.run("sell", "001", "--gross", "120")).isEqualTo(Status.REFUSED);
        assertThat(shop.err().replaceAll("\n +", " "))
                .contains("not on record: safety_tested, owner_data_reset, disclosed")
                .contains("--safety-tested --owner-data-reset --disclosed");
    }

    @Test
    void withAReasonItIsSoldAndTheReasonKept() {
        assertThat(shop.run("sell", "001", "--gross", "120", "--unmet", "to a dealer, as it is"))
                .isZero();
        assertThat(shop.out())
                .isEqualTo("entry 6: L0042-001 sold, for 120.00, workaround not disclosed,"
                        + " release checks unmet: \"to a dealer, as it is\"\n");
    }

    @Test
    void atTheRetestTheyAreAskedForWhereSomebodyCanBeAsked() {
        shop.answering("y", "n")
                .run("attempt", "002", "--fault", "backlight", "--fix", "led_strips", "--passed", "yes");
        assertThat(shop.questions()).hasSize(2);
        assertThat(shop.out()).contains("safety tested").doesNotContain("owner data reset");
    }

    @Test
    void whatIsOnRecordIsNotAskedAgain() {
        shop.run("attempt", "001", "--fault", "row_drive", "--fix", "none", "--safety-tested", "--owner-data-reset");
        assertThat(shop.run("sell", "001", "--gross", "120", "--disclosed"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out()).isEqualTo("entry 7: L0042-001 sold, for 120.00, workaround disclosed\n");
    }

    @Test
    void checksNamedAtTheSaleStandWithTheLatestAttempt() {
        assertThat(shop.run("sell", "001", "--gross", "120", "--disclosed", "--safety-tested", "--owner-data-reset"))
                .isZero();
        assertThat(shop.out())
                .contains("entry 6: L0042-001 row_drive, contact_mask, passed, safety tested, owner data reset\n")
                .contains("entry 7: L0042-001 sold");
    }

    @Test
    void atATerminalTheyAreAskedFor() {
        assertThat(shop.answering("y", "what?", "yes", "Y").run("sell", "001", "--gross", "120"))
                .isZero();
        assertThat(shop.questions()).hasSize(4);
        assertThat(shop.questions().get(0)).contains("electrical safety");
        assertThat(shop.out()).contains("safety tested, owner data reset", "workaround disclosed");
    }

    @Test
    void aNoAsksForTheReason() {
        assertThat(shop.answering("n", "y", "y", "dealer").run("sell", "001", "--gross", "120"))
                .isZero();
        assertThat(shop.out()).contains("owner data reset").contains("release checks unmet: \"dealer\"");
    }

    @Test
    void withoutAReasonNothingIsSold() {
        assertThat(shop.answering("n", "y", "y", "").run("sell", "001", "--gross", "120"))
                .isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("safety_tested unmet. Nothing was recorded");
        shop.run("show", "001");
        assertThat(shop.out()).doesNotContain("sold", "owner data reset");
    }

    @Test
    void theEndOfInputIsNoAnswer() {
        assertThat(shop.answering("y").run("sell", "001", "--gross", "120")).isEqualTo(Status.REFUSED);
    }

    @Test
    void aSetThatCameBackIsCheckedAnew() {
        shop.run("sell", "001", "--gross", "120", "--disclosed", "--safety-tested", "--owner-data-reset");
        shop.at("2026-03-20T10:00:00Z").run("comeback", "001", "--restocked");
        assertThat(shop.run("sell", "001", "--gross", "100", "--disclosed")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("safety_tested, owner_data_reset");
        assertThat(shop.run("sell", "001", "--gross", "100", "--disclosed", "--safety-tested", "--owner-data-reset"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out())
                .contains("unknown, no fix, safety tested, owner data reset, \"release checks at the sale\"");
    }
}
