package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.demo.DemoShop;

/** More draws than anybody needs. */
class WorthExtremesTest {
    @TempDir
    static Path temporary;

    private static TestShop shop = new TestShop(Path.of(""));

    @BeforeAll
    static void open() throws IOException {
        shop = ImportedShop.of(DemoShop.history(1), temporary);
        Files.writeString(shop.folder().resolve("list.csv"), """
                Maker,Model,Size,Condition,Qty
                Kestrel,KX-55A,55,horizontal lines,3
                Orlan,43U-7,43,untested,2
                """);
    }

    private static JsonNode answer(String draws) throws IOException {
        assertThat(shop.run("worth", "list.csv", "--draws", draws, "--confidence", "0.6", "--format", "json"))
                .as(shop.err())
                .isZero();
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void aMillionDrawsSayWhatTwentyThousandSay() throws IOException {
        JsonNode many = answer("1000000");
        JsonNode few = answer("20000");
        JsonNode recovery = many.get("recovery");
        double sd = recovery.get("sd").doubleValue();
        for (String figure : new String[] {"mean", "sd", "p10", "p50", "p90"}) {
            assertThat(few.get("recovery").get(figure).doubleValue())
                    .as(figure)
                    .isCloseTo(recovery.get(figure).doubleValue(), within(0.1 * sd));
        }
        assertThat(few.get("highest_bid").get("price").doubleValue())
                .isCloseTo(many.get("highest_bid").get("price").doubleValue(), within(0.1 * sd));
    }
}
