package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.cli.Launched.Result;
import org.salvedge.shop.Lot;

/** The tab key, in a real bash. */
class CompletionIT {
    private static final Path BASH = Path.of("/bin/bash");

    private Path shop;

    @BeforeEach
    void shop(@TempDir Path temporary) throws Exception {
        org.junit.jupiter.api.Assumptions.assumeTrue(Files.isExecutable(BASH));
        shop = temporary.resolve("shop");
        TestShop made = TestShop.withLot(shop);
        made.book(TestShop.lot("M7", "10.00"), TestShop.set("M7", 1));
        Files.writeString(shop.resolve("shop.toml"), "currency = \"EUR\"\n[codes]\nfaults = [\"remote_sensor\"]\n");
    }

    /** What the tab key offers after these words, the last of them not finished. */
    private List<String> offered(String... words) {
        StringBuilder line = new StringBuilder();
        for (String word : words) {
            line.append(" '").append(word).append('\'');
        }
        String script = "source <(\"$0\" completion bash); COMP_WORDS=(\"$0\"" + line + "); COMP_CWORD=" + words.length
                + "; _salvedge; printf '%s\\n' \"${COMPREPLY[@]}\"";
        Result result = Launched.in(shop).as(BASH).run("-c", script, Launched.LAUNCHER.toString());
        assertThat(result.err()).isEmpty();
        List<String> offered = new ArrayList<>(List.of(result.out().split("\n")));
        offered.removeIf(String::isEmpty);
        return offered;
    }

    @Test
    void commandsAreOffered() {
        assertThat(offered("att")).containsExactly("attempt");
        assertThat(offered("")).containsAll(Commands.names()).contains("--shop", "help");
        assertThat(offered("help", "rec")).containsExactlyInAnyOrder("receive", "recycle");
    }

    @Test
    void optionsOfTheCommandAreOffered() {
        assertThat(offered("attempt", "L0042-001", "--diag")).containsExactly("--diagnosis-minutes");
        assertThat(offered("sell", "--un")).containsExactly("--unmet");
        assertThat(offered("lost", "--")).contains("--on", "--shop").doesNotContain("--fault");
    }

    @Test
    void codesAreOfferedTheShopsOwnToo() {
        assertThat(offered("attempt", "x", "--fault", "re")).containsExactly("remote_sensor");
        assertThat(offered("attempt", "x", "--fix", "led")).containsExactlyInAnyOrder("led_strips", "led_driver");
        assertThat(offered("attempt", "x", "--grade", "")).containsExactly("A", "B", "C");
        assertThat(offered("attempt", "x", "--passed", "")).containsExactly("yes", "no");
        assertThat(offered("yield", "--format", "c")).containsExactly("csv");
    }

    @Test
    void keysAndSuppliersAreOfferedAsTextNeverAsACommand() {
        assertThat(offered("yield", "--by", "fam")).containsExactly("family");
        assertThat(offered("yield", "--by", "family,su")).containsExactly("family,supplier");
        assertThat(offered("worth", "--supplier", "Nor")).containsExactly("Northquay");
        Lot odd = TestShop.lot("M8", "10.00");
        new TestShop(shop)
                .book(new Lot(
                        odd.lot(),
                        "$(touch gone) & Sons",
                        odd.boughtOn(),
                        odd.currency(),
                        null,
                        odd.price(),
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null));
        assertThat(offered("worth", "--supplier", "")).containsExactly("$(touch gone) & Sons", "Northquay");
        assertThat(shop.resolve("gone")).doesNotExist();
    }

    @Test
    void labelsAreOfferedFromTheLedger() {
        assertThat(offered("attempt", "L0042-")).containsExactly("L0042-001", "L0042-002", "L0042-003");
        assertThat(offered("show", "M7")).containsExactlyInAnyOrder("M7-001", "M7");
    }

    @Test
    void theShopNamedOnTheLineIsAsked() {
        assertThat(offered("--shop", shop.resolveSibling("none").toString(), "attempt", "L"))
                .isEmpty();
        assertThat(offered("--shop", shop.toString(), "attempt", "L")).hasSize(3);
    }
}
