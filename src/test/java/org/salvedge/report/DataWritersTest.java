package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Text;

class DataWritersTest {
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final Currency KWD = Currency.getInstance("KWD");

    private static Table table() {
        return Table.of(
                        Column.of("model", "model", Kind.TEXT),
                        Column.of("sets", "sets", Kind.COUNT),
                        Column.of("yield", "yield", Kind.INTERVAL),
                        Column.of("margin_total", "margin", Kind.MONEY_TOTAL),
                        Column.screen("only here", Kind.BAR),
                        Column.of("on", "on", Kind.DATE),
                        Column.of("told", "told", Kind.YES_NO))
                .row(
                        "a \"b\", c",
                        3,
                        new Estimate(1 / 3.0, 0.1, 0.5),
                        Money.parse("12.50", EUR),
                        1.0,
                        LocalDate.of(2026, 3, 14),
                        true)
                .row(Fault.BACKLIGHT, null, null, Money.parse("1.250", KWD), null, null, null)
                .build();
    }

    @Test
    void csvIsRfc4180WithUndefinedFiguresEmpty() {
        StringBuilder out = new StringBuilder();
        CsvWriter.write(table(), out);
        assertThat(out.toString())
                .isEqualTo("model,sets,yield,yield_low,yield_high,margin_total,on,told\r\n"
                        + "\"a \"\"b\"\", c\",3,0.3333333333333333,0.1,0.5,12.50,2026-03-14,true\r\n"
                        + "backlight,,,,,1.250,,\r\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", " =1", "\t=1", "\uff1d1", "\r=1", "\n=cmd|'/c'!A0"})
    void textInCsvIsNeverAFormula(String text) throws IOException {
        StringBuilder out = new StringBuilder();
        CsvWriter.write(Table.of(Column.of("t", "t", Kind.TEXT)).row(text).build(), out);
        String cell = CSVFormat.RFC4180
                .parse(new java.io.StringReader(out.toString()))
                .getRecords()
                .get(1)
                .get(0);
        assertThat(cell.strip())
                .doesNotStartWith("=")
                .doesNotStartWith("+")
                .doesNotStartWith("-")
                .doesNotStartWith("@")
                .doesNotStartWith("\uff1d");
        assertThat(cell).doesNotContain("\r", "\n", "\t");
    }

    @Test
    void textInCsvIsNoFormulaAtASemicolonEither() {
        StringBuilder out = new StringBuilder();
        CsvWriter.write(
                Table.of(Column.of("t", "t", Kind.TEXT))
                        .row("a;=HYPERLINK(\"x\")")
                        .build(),
                out);
        assertThat(out.toString()).isEqualTo("t\r\n\"a;'=HYPERLINK(\"\"x\"\")\"\r\n");
    }

    @Test
    void jsonKeepsPrecisionTextAndTheDigitsOfMoney() throws IOException {
        StringWriter out = new StringWriter();
        JsonWriter.write(table(), out);
        assertThat(out.toString())
                .isEqualTo("{\"rows\":[{\"model\":\"a \\\"b\\\", c\",\"sets\":3,\"yield\":0.3333333333333333,"
                        + "\"yield_low\":0.1,\"yield_high\":0.5,\"margin_total\":12.50,\"on\":\"2026-03-14\",\"told\":true},"
                        + "{\"model\":\"backlight\",\"sets\":null,\"yield\":null,\"yield_low\":null,\"yield_high\":null,"
                        + "\"margin_total\":1.250,\"on\":null,\"told\":null}]}\n");
    }

    @Test
    void jsonIsNestedAndNeverHoldsWhatIsNotANumber() throws IOException {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("z", List.of(1, 2.5, "x"));
        map.put("a", new double[] {Double.NaN, Double.POSITIVE_INFINITY, 1e-9});
        map.put("minutes", Quantity.parse("12.50"));
        StringWriter out = new StringWriter();
        JsonWriter.write(map, out);
        assertThat(out.toString()).isEqualTo("{\"z\":[1,2.5,\"x\"],\"a\":[null,null,1.0E-9],\"minutes\":12.5}\n");
    }

    @Test
    void jsonTextComesBackAsItWasButNoTerminalObeysIt() throws IOException {
        String text = "\u001b[2J\u009b1m\u007f\u202e\u2028 Käthe \ud83d\ude00 =1";
        StringWriter out = new StringWriter();
        JsonWriter.write(Map.of("t", text), out);
        assertThat(out.toString().strip().codePoints().filter(Text::isCommand)).isEmpty();
        JsonNode read = new ObjectMapper().readTree(out.toString());
        assertThat(read.get("t").asText()).isEqualTo(text);
        assertThat(out.toString()).contains("Käthe");
    }

    /** U+1F600 is a face; U+E0041 and U+1D173 are not seen; a half of a pair is no character (RFC 8259, section 8.2). */
    @Test
    void jsonOfCharactersBeyondTheFirstPlaneIsValidUtf8AndHidesNothing() throws IOException {
        String whole = "a\ud83d\ude00\udb40\udc41\ud834\udd73z";
        StringWriter out = new StringWriter();
        JsonWriter.write(Map.of("t", whole, "half", "x\ud83d y\ude00\ud83d", "key\ud83d", 1), out);

        byte[] utf8 = out.toString().getBytes(StandardCharsets.UTF_8);
        assertThat(new String(utf8, StandardCharsets.UTF_8)).isEqualTo(out.toString());
        assertThat(out.toString().strip().codePoints().filter(Text::isCommand)).isEmpty();
        JsonNode read = new ObjectMapper().readTree(utf8);
        assertThat(read.get("t").asText()).isEqualTo(whole);
        assertThat(read.get("half").asText()).isEqualTo("x\ufffd y\ufffd\ufffd");
        assertThat(read.get("key\ufffd").asInt()).isEqualTo(1);
    }
}
