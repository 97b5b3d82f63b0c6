package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Facts;

/** datapackage.json against the published profile; see resources/frictionless/README.md for where that is from. */
class DescriptorTest {
    private static final PackageSettings SETTINGS =
            new PackageSettings(Facts.EUR, ZoneId.of("Europe/Paris"), new BigDecimal("24.50"), Basis.AREA);

    private static JsonNode ours(List<Table<?>> tables) throws IOException {
        return new ObjectMapper().readTree(Descriptor.json(tables, SETTINGS));
    }

    private static JsonSchema profile() throws IOException {
        try (InputStream in = Objects.requireNonNull(
                DescriptorTest.class.getResourceAsStream("/frictionless/tabular-data-package.json"))) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V4).getSchema(in);
        }
    }

    @Test
    void keepsToThePublishedProfile() throws IOException {
        assertThat(profile().validate(ours(Tables.ALL))).isEmpty();
        assertThat(profile().validate(ours(PackageFiles.NEEDED))).isEmpty();
    }

    /** The check above can fail: each of these breaks the profile. */
    @ParameterizedTest
    @CsvSource({
        "/resources/0/schema/fields/0, type, figure",
        "/resources/1, profile, none",
        "/resources/2/schema/fields/0, constraints, none",
        "/resources/3/schema, primaryKey, 7"
    })
    void theProfileNoticesWhatIsWrong(String where, String property, String value) throws IOException {
        JsonNode root = ours(Tables.ALL);
        ((ObjectNode) root.at(where))
                .set(property, new ObjectMapper().readTree(value.equals("7") ? "7" : "\"" + value + "\""));

        assertThat(profile().validate(root)).isNotEmpty();
    }

    @Test
    void settingsThatFiguresRestOnTravelWithIt() throws IOException {
        assertThat(ours(Tables.ALL).path("shop"))
                .isEqualTo(
                        new ObjectMapper()
                                .readTree(
                                        "{\"currency\":\"EUR\",\"zone\":\"Europe/Paris\",\"labour_rate\":24.50,\"basis\":\"area\"}"));
    }

    @Test
    void everyLinkLeadsToAKeyOfATableBeforeIt() {
        List<Table<?>> before = new ArrayList<>();
        for (Table<?> table : Tables.ALL) {
            for (Link link : Link.of(table)) {
                assertThat(before).contains(link.to());
                assertThat(link.to().columns())
                        .filteredOn(Column::isKey)
                        .extracting(Column::name)
                        .containsExactly(link.there());
                assertThat(table.columns()).extracting(Column::name).contains(link.column());
            }
            before.add(table);
        }
    }
}
