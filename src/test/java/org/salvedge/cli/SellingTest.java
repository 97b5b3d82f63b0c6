package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Fact;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** What `show` says of a set that passed and waits for a buyer. */
class SellingTest {
    @TempDir
    Path folder;

    @Test
    void aYoungShopIsToldThatTheDaysAreAssumed() {
        TestShop shop = TestShop.withLot(folder);
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "led_strips", "--passed", "yes", "--grade", "A");
        shop.run("show", "L0042-001");
        assertThat(shop.out()).contains("Ask ").contains("(assumed)").doesNotContain("For the buyer");
        shop.run("show", "L0042-002");
        assertThat(shop.out()).doesNotContain("Ask ");
    }

    @Test
    void theBuyerOfAMaskedPanelIsToldInPlainWords() {
        TestShop shop = TestShop.withLot(folder);
        shop.run(
                "attempt",
                "001",
                "--fault",
                "row_drive",
                "--fix",
                "contact_mask",
                "--passed",
                "yes",
                "--rows",
                "2160",
                "--residual-close",
                "faint",
                "--residual-viewing",
                "none");
        shop.run("show", "L0042-001");
        String out = shop.out().replaceAll("\\s+", " ");
        assertThat(out)
                .contains("For the buyer: This set had lines on the screen.")
                .contains("This is a workaround: the fault itself was not mended")
                .contains("Seen from 1.09 m: no trace. Seen close up: faint traces.");
    }

    @Test
    void theAskingPriceRestsOnTheShopsOwnSalesAndOffers() throws Exception {
        TestShop shop = TestShop.withLot(folder);
        List<Fact> facts = new ArrayList<>();
        facts.add(TestShop.lot("L0050", "500.00"));
        int sets = 20;
        for (int i = 0; i < sets; i++) {
            facts.add(TvSet.builder(new UnitId(label(i)), new LotId("L0050"))
                    .maker("Kestrel")
                    .model("KX-55A")
                    .family("Kestrel KX-55")
                    .inches(Quantity.of(55))
                    .build());
        }
        shop.book(facts.toArray(Fact[]::new));
        LocalDate day = LocalDate.parse("2026-03-02");
        for (int i = 0; i < sets; i++) {
            // On offer at 200, sold for 180 after 1, 1, 2, 2, ... days; the last two not yet.
            shop.run(
                    "attempt",
                    label(i),
                    "--fault",
                    "backlight",
                    "--fix",
                    "led_strips",
                    "--passed",
                    "yes",
                    "--grade",
                    "B",
                    "--at",
                    day + "T09:00",
                    "--safety-tested",
                    "--owner-data-reset");
            shop.run("offer", label(i), "200", "--on", day.toString());
            if (i < sets - 2) {
                assertThat(shop.run(
                                "sell",
                                label(i),
                                "--gross",
                                "180",
                                "--on",
                                day.plusDays(1 + i / 2).toString()))
                        .as(shop.err())
                        .isZero();
            }
        }
        shop.run("show", label(sets - 1));
        String out = shop.out().replaceAll("\\s+", " ");
        assertThat(out)
                .contains("at 0.90 of the first offer")
                .contains("Half sell within 5 days; if it still stands after 8")
                .contains("On offer at 200.00, for 12 days: lower it now.");
        double ask = Double.parseDouble(out.replaceAll(".*Ask ([0-9]+):.*", "$1"));
        assertThat(ask).isBetween(180.0, 215.0);
        shop.run("show", label(sets - 1), "--format", "json");
        var selling = new com.fasterxml.jackson.databind.ObjectMapper()
                .readTree(shop.out())
                .get("selling");
        assertThat(selling.get("days_to_sale").asDouble()).isEqualTo(5);
        assertThat(selling.get("lower_after").asInt()).isEqualTo(8);
        assertThat(selling.get("ask").asDouble())
                .isGreaterThan(selling.get("lower_to").asDouble());
        assertThat(selling.get("assumed").asBoolean()).isFalse();
    }

    private static String label(int i) {
        return String.format(Locale.ROOT, "L0050-%03d", i + 1);
    }
}
