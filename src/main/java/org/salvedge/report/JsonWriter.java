package org.salvedge.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Text;

/**
 * JSON for other programs: numbers in full precision, money as a number with the digits of its currency, null where a figure is
 * undefined, text exactly as it is with every character that a terminal might obey escaped.
 */
public final class JsonWriter {
    private static final JsonFactory FACTORY =
            new JsonFactoryBuilder().characterEscapes(new Escapes()).build();

    private JsonWriter() {}

    /** {@code {"rows":[{…}, …]}} and a line feed. */
    public static void write(Table table, Writer out) {
        write(Map.of("rows", table), out);
    }

    /**
     * A map (keys in its order), list, table (as the list of its rows), text, number, money, date, boolean or null, each within
     * the others, and a line feed.
     */
    public static void write(@Nullable Object value, Writer out) {
        try (JsonGenerator json = FACTORY.createGenerator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            put(json, value);
            json.writeRaw('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void put(JsonGenerator json, @Nullable Object value) throws IOException {
        if (value instanceof Table table) {
            rows(json, table);
        } else if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> e : map.entrySet()) {
                json.writeFieldName(whole(String.valueOf(e.getKey())));
                put(json, e.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof Iterable<?> list) {
            json.writeStartArray();
            for (Object item : list) {
                put(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof double[] numbers) {
            json.writeStartArray();
            for (double number : numbers) {
                number(json, number);
            }
            json.writeEndArray();
        } else {
            single(json, value);
        }
    }

    private static void single(JsonGenerator json, @Nullable Object value) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Money money) {
            json.writeNumber(money.amount());
        } else if (value instanceof Quantity quantity) {
            json.writeNumber(new BigDecimal(quantity.toString()));
        } else if (value instanceof Double number) {
            number(json, number);
        } else if (value instanceof BigDecimal number) {
            json.writeNumber(number);
        } else if (value instanceof Number number) {
            json.writeNumber(number.longValue());
        } else if (value instanceof Boolean yes) {
            json.writeBoolean(yes);
        } else if (value instanceof Temporal) {
            json.writeString(value.toString());
        } else {
            json.writeString(whole(CellText.text(value)));
        }
    }

    /** Without halves of characters, which no UTF-8 can hold. */
    private static String whole(String text) {
        boolean halves = text.codePoints().anyMatch(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE);
        if (!halves) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE ? '\ufffd' : c)
                .forEach(out::appendCodePoint);
        return out.toString();
    }

    private static void number(JsonGenerator json, double number) throws IOException {
        if (Double.isFinite(number)) {
            json.writeNumber(number);
        } else {
            json.writeNull();
        }
    }

    private static void rows(JsonGenerator json, Table table) throws IOException {
        json.writeStartArray();
        for (List<@Nullable Object> row : table.rows()) {
            json.writeStartObject();
            for (int c = 0; c < row.size(); c++) {
                Column column = table.columns().get(c);
                if (column.inData() && column.kind() == Kind.INTERVAL) {
                    Estimate e = row.get(c) instanceof Estimate given ? given : Estimate.UNDEFINED;
                    field(json, column.key(), e.value());
                    field(json, column.key() + "_low", e.low());
                    field(json, column.key() + "_high", e.high());
                } else if (column.inData()) {
                    field(json, column.key(), row.get(c));
                }
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void field(JsonGenerator json, String key, @Nullable Object value) throws IOException {
        json.writeFieldName(key);
        single(json, value);
    }

    /** Escapes what {@link Visible} would hide. */
    private static final class Escapes extends CharacterEscapes {
        private static final long serialVersionUID = 1;
        private static final int DELETE = 0x7f;

        @Override
        public int[] getEscapeCodesForAscii() {
            int[] codes = CharacterEscapes.standardAsciiEscapesForJSON();
            codes[DELETE] = CharacterEscapes.ESCAPE_STANDARD;
            return codes;
        }

        @Override
        public @Nullable SerializableString getEscapeSequence(int c) {
            // Characters beyond U+FFFF come here half by half, and some of them are such; JSON's own escapes are by
            // halves too.
            return Text.isCommand(c) ? new SerializedString(String.format(Locale.ROOT, "\\u%04X", c)) : null;
        }
    }
}
