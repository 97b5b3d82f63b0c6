package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The month's review counts sales without all release checks. */
class ReleaseExceptionsTest {
    @TempDir
    Path folder;

    private TestShop shop = new TestShop(Path.of(""));

    @BeforeEach
    void threeSetsThatPassed() {
        shop = TestShop.withLot(folder);
        for (String unit : new String[] {"001", "002", "003"}) {
            done("attempt", unit, "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
        }
    }

    private void done(String... command) {
        assertThat(shop.run(command)).as(shop.err()).isZero();
    }

    private String json() {
        done("month", "2026-03", "--format", "json");
        return shop.out().replaceAll("\\s", "");
    }

    @Test
    void aSaleWithAReasonIsUnmetAndOneWithAllChecksIsNoException() {
        done("sell", "001", "--gross", "120", "--unmet", "to a dealer");
        done("sell", "002", "--gross", "120", "--safety-tested", "--owner-data-reset", "--disclosed");
        assertThat(json()).contains("\"release_checks\":{\"sales\":2,\"unmet\":1,\"not_on_record\":0}");
    }

    @Test
    void salesOfOtherMonthsAreNotCounted() {
        done("sell", "001", "--gross", "120", "--unmet", "to a dealer");
        done("month", "2026-02", "--format", "json");
        assertThat(shop.out().replaceAll("\\s", "")).contains("\"release_checks\":{\"sales\":0,");
    }

    @Test
    void asOfTheDayBeforeItWasRecordedTheSaleIsNotThere() {
        done("sell", "001", "--gross", "120", "--unmet", "to a dealer");
        done("month", "2026-03", "--format", "json", "--as-of", "2026-03-13");
        assertThat(shop.out().replaceAll("\\s", "")).contains("\"release_checks\":{\"sales\":0,");
    }

    @Test
    void thePageListsSetChecksAndReason() throws IOException {
        done("sell", "001", "--gross", "120", "--unmet", "to a <dealer>");
        done("month", "2026-03", "--html", folder.resolve("m.html").toString());
        String page = Files.readString(folder.resolve("m.html"));
        assertThat(page)
                .contains("sales, a release check unmet")
                .contains("safety_tested, owner_data_reset, disclosed")
                .contains("to a &lt;dealer&gt;");
    }
}
