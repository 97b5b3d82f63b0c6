package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneId;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsTextTest {
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    private static final Currency EUR = Currency.getInstance("EUR");

    private static Settings parse(String text) {
        return SettingsText.parse(text, "shop.toml", BERLIN);
    }

    @Test
    void aSilentFileGivesTheDefaults() {
        assertThat(parse("")).isEqualTo(Settings.defaults(EUR, BERLIN));
        assertThat(parse("# nothing\n")).isEqualTo(Settings.defaults(EUR, BERLIN));
    }

    @Test
    void theTemplateSaysWhatHoldsWithoutIt() {
        assertThat(parse(SettingsTemplate.of(EUR, BERLIN, false))).isEqualTo(Settings.defaults(EUR, BERLIN));
        ZoneId lima = ZoneId.of("America/Lima");
        assertThat(parse(SettingsTemplate.of(Currency.getInstance("JPY"), lima, true)))
                .isEqualTo(Settings.defaults(Currency.getInstance("JPY"), lima));
    }

    @Test
    void everySettingIsRead() {
        Settings s = parse("""
                currency = "CHF"
                zone = "Europe/Zurich"
                labour_rate = 31.50
                basis = "area"
                confidence = 0.9
                target_return = 0.15
                draws = 5000
                seed = 7
                page_size = "letter"
                [families]
                "KX-55" = "Kestrel KX-55"
                [columns]
                "Item No." = "model"
                [symptoms]
                "lines on scrn" = "horizontal_lines"
                "smells" = "burnt"
                [codes]
                faults = ["remote_sensor"]
                fixes = { sensor_swap = "a new sensor" }
                [codes.claims]
                burnt = "smells of fire"
                """);
        assertThat(s.currency()).isEqualTo(Currency.getInstance("CHF"));
        assertThat(s.labourRate()).isEqualByComparingTo("31.5");
        assertThat(s.basis()).isEqualTo(Basis.AREA);
        assertThat(s.pageSize()).isEqualTo("Letter");
        assertThat(s.families()).containsEntry("KX-55", "Kestrel KX-55");
        assertThat(s.columns()).containsEntry("Item No.", "model");
        assertThat(s.symptoms()).containsEntry("smells", "burnt");
        assertThat(s.codes().faults()).containsKey(new Fault("remote_sensor")).containsKey(Fault.BACKLIGHT);
        assertThat(s.codes().fixes()).containsEntry(new Fix("sensor_swap"), "a new sensor");
        assertThat(s.codes().claims()).containsKey(new Claim("burnt"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
        labor_rate = 3                  | line 2: "labor_rate" is not a setting. Did you mean labour_rate?
        labour_rate = -3                | line 2: "labour_rate" cannot be "-3". Give an amount per hour, as in 24
        labour_rate = "24"              | line 2: "labour_rate" cannot be "24"
        currency = "EURO"               | line 2: "currency" cannot be "EURO". Give an ISO 4217 code
        currency = "XAU"                | line 2: "currency" cannot be "XAU"
        zone = "Mars"                   | line 2: "zone" cannot be "Mars"
        basis = "given"                 | line 2: "basis" cannot be "given"
        confidence = 1                  | line 2: "confidence" cannot be "1"
        draws = 99                      | line 2: "draws" cannot be "99"
        draws = 2.5                     | line 2: "draws" cannot be "2.5"
        page_size = "A3"                | line 2: "page_size" cannot be "A3"
        seed = [1]                      | line 2: "seed" is a list or a table
        families = "KX"                 | line 2: "families" is not a table
        families = { KX = 55 }          | line 2: "KX" has no text
        columns.a.b = "model"           | "a" has no text
        symptoms = { lines = "stripes" } | line 2: "lines" stands for "stripes", which is no claim code
        codes = { tools = ["x"] }       | "tools" is no kind of code. There are faults, fixes, claims
        codes = { faults = ["Not A Code"] } | "Not A Code" is not a code
        codes = { faults = "x" }        | "faults" is not a list
        colour = "red"                  | line 2: "colour" is not a setting. There are currency, zone
        a = = 1                         | line 2: not TOML
        """)
    void whatCannotBeIsRefusedWithItsLineAndAdvice(String line, String message) {
        assertThatThrownBy(() -> parse("# first line\n" + line + "\n"))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("shop.toml")
                .hasMessageContaining(message);
    }

    @Test
    void aLineIsFoundInItsOwnTable() {
        assertThatThrownBy(() -> parse("seed = 1\n[families]\n\"KX\" = \"a\"\n[symptoms]\n'seed' = \"x\"\n"))
                .hasMessageContaining("line 5: \"seed\" stands for \"x\"");
    }

    @Test
    void theSameKeyTwiceIsRefused() {
        assertThatThrownBy(() -> parse("seed = 1\nseed = 2\n")).hasMessageContaining("not TOML (duplicate key)");
    }
}
