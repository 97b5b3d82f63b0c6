package org.salvedge.shop;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.toml.TomlFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads the text of {@code shop.toml}. A key that is no setting is refused with its line, and so is a value that cannot be. */
public final class SettingsText {
    private static final List<String> KEYS = List.of(
            "currency",
            "zone",
            "labour_rate",
            "basis",
            "confidence",
            "target_return",
            "draws",
            "seed",
            "page_size",
            "families",
            "columns",
            "symptoms",
            "codes");
    private static final List<String> CODE_KEYS = List.of("faults", "fixes", "claims");

    private final String text;
    private final String file;
    private final ZoneId machine;
    private final Map<String, Value> values = new LinkedHashMap<>();
    private final Map<String, Map<String, String>> tables = new LinkedHashMap<>();
    private final Map<Fault, String> faults = new LinkedHashMap<>(Fault.BUILT_IN);
    private final Map<Fix, String> fixes = new LinkedHashMap<>(Fix.BUILT_IN);
    private final Map<Claim, String> claims = new LinkedHashMap<>(Claim.BUILT_IN);

    /** A value as written. */
    private record Value(JsonToken token, String text) {}

    private SettingsText(String text, String file, ZoneId machine) {
        this.text = text;
        this.file = file;
        this.machine = machine;
    }

    /**
     * @param file its name, for messages
     * @param machine zone where the text names none
     * @throws Refused naming line, key, what is wrong and what to do
     */
    public static Settings parse(String text, String file, ZoneId machine) {
        SettingsText reading = new SettingsText(text, file, machine);
        try (JsonParser toml = new TomlFactory().createParser(text)) {
            reading.read(toml);
        } catch (JsonProcessingException e) {
            throw new Refused(file + ", line " + e.getLocation().getLineNr() + ": not TOML ("
                    + e.getOriginalMessage().toLowerCase(Locale.ROOT)
                    + "). Write key = value, texts in quotes: currency = \"EUR\"");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return reading.settings();
    }

    private void read(JsonParser toml) throws IOException {
        toml.nextToken();
        while (toml.nextToken() == JsonToken.FIELD_NAME) {
            String key = toml.currentName();
            if (!KEYS.contains(key)) {
                throw refused("", key, "is not a setting", advice(key));
            }
            JsonToken token = toml.nextToken();
            switch (key) {
                case "families", "columns", "symptoms" -> tables.put(key, table(toml, key, token));
                case "codes" -> codes(toml, token);
                default -> {
                    if (!token.isScalarValue()) {
                        throw refused("", key, "is a list or a table", "Give one value");
                    }
                    values.put(key, new Value(token, toml.getText()));
                }
            }
        }
    }

    private Map<String, String> table(JsonParser toml, String name, JsonToken start) throws IOException {
        if (start != JsonToken.START_OBJECT) {
            throw refused(
                    "", name, "is not a table", "Write [" + name + "] on a line of its own, the entries below it");
        }
        Map<String, String> entries = new LinkedHashMap<>();
        while (toml.nextToken() == JsonToken.FIELD_NAME) {
            String key = toml.currentName();
            if (toml.nextToken() != JsonToken.VALUE_STRING) {
                throw refused(
                        name, key, "has no text", "Write both sides in quotes, as in \"KX-55\" = \"Kestrel KX-55\"");
            }
            entries.put(key, toml.getText());
        }
        return entries;
    }

    private void codes(JsonParser toml, JsonToken start) throws IOException {
        if (start != JsonToken.START_OBJECT) {
            throw refused("", "codes", "is not a table", "Write [codes] and below it faults = [\"a_code\"]");
        }
        while (toml.nextToken() == JsonToken.FIELD_NAME) {
            String key = toml.currentName();
            if (!CODE_KEYS.contains(key)) {
                throw refused("codes", key, "is no kind of code", "There are " + String.join(", ", CODE_KEYS));
            }
            JsonToken token = toml.nextToken();
            if (token == JsonToken.START_OBJECT) {
                table(toml, key, token).forEach((code, meaning) -> add(key, code, meaning));
            } else if (token == JsonToken.START_ARRAY) {
                while (toml.nextToken() != JsonToken.END_ARRAY) {
                    add(key, toml.getText(), "");
                }
            } else {
                throw refused("codes", key, "is not a list", "Write " + key + " = [\"a_code\", \"another\"]");
            }
        }
    }

    private void add(String kind, String code, String meaning) {
        try {
            switch (kind) {
                case "faults" -> faults.putIfAbsent(new Fault(code), meaning);
                case "fixes" -> fixes.putIfAbsent(new Fix(code), meaning);
                default -> claims.putIfAbsent(new Claim(code), meaning);
            }
        } catch (IllegalArgumentException e) {
            throw new Refused(file + ", " + kind + ": " + e.getMessage());
        }
    }

    private Settings settings() {
        Currency currency = read(
                "currency", Currency.getInstance("EUR"), SettingsText::currency, "an ISO 4217 code, as in \"EUR\"");
        ZoneId zone = read("zone", machine, SettingsText::zone, "a time zone, as in \"Europe/Berlin\"");
        BigDecimal labour =
                read("labour_rate", Settings.LABOUR_RATE, SettingsText::notNegative, "an amount per hour, as in 24");
        Basis basis = read("basis", Basis.EQUAL, SettingsText::basis, "\"equal\", \"area\" or \"value\"");
        double confidence = read("confidence", 0.8, v -> between(v, 0, 1), "a number between 0 and 1, as in 0.8");
        double target = read("target_return", 0.0, v -> between(v, -1, 10), "a fraction, as in 0.15 for 15 %");
        int draws = read("draws", 20_000, v -> (int) whole(v, 100, 10_000_000), "a whole number from 100 to 10000000");
        long seed = read("seed", 1L, v -> whole(v, Long.MIN_VALUE, Long.MAX_VALUE), "a whole number");
        String page = read("page_size", "A4", SettingsText::page, "\"A4\" or \"Letter\"");
        Codes codes = new Codes(faults, fixes, claims);
        symptoms(codes);
        return new Settings(
                currency,
                zone,
                labour,
                basis,
                confidence,
                target,
                draws,
                seed,
                page,
                entries("families"),
                entries("columns"),
                entries("symptoms"),
                codes);
    }

    private void symptoms(Codes codes) {
        entries("symptoms").forEach((words, code) -> {
            if (codes.claims().keySet().stream().noneMatch(c -> c.code().equals(code))) {
                throw refused(
                        "symptoms",
                        words,
                        "stands for \"" + code + "\", which is no claim code",
                        "Codes: "
                                + String.join(
                                        ", ",
                                        codes.claims().keySet().stream()
                                                .map(Claim::code)
                                                .toList()));
            }
        });
    }

    private Map<String, String> entries(String table) {
        return tables.getOrDefault(table, Map.of());
    }

    /** Turns a value into what it means. */
    private interface Reader<T> {
        /** @throws RuntimeException if it means nothing */
        T read(Value value);
    }

    private <T> T read(String key, T otherwise, Reader<T> reader, String wanted) {
        Value value = values.get(key);
        if (value == null) {
            return otherwise;
        }
        try {
            return reader.read(value);
        } catch (IllegalArgumentException | ArithmeticException | DateTimeException e) {
            throw refused("", key, "cannot be \"" + value.text() + "\"", "Give " + wanted);
        }
    }

    private static Currency currency(Value value) {
        Currency currency = Currency.getInstance(word(value));
        Money.zero(currency);
        return currency;
    }

    private static ZoneId zone(Value value) {
        return ZoneId.of(word(value));
    }

    private static BigDecimal notNegative(Value value) {
        BigDecimal number = number(value);
        if (number.signum() < 0) {
            throw new IllegalArgumentException();
        }
        return number;
    }

    private static Basis basis(Value value) {
        return Coded.find(Basis.class, word(value))
                .filter(b -> b != Basis.GIVEN)
                .orElseThrow(IllegalArgumentException::new);
    }

    private static double between(Value value, double low, double high) {
        double number = number(value).doubleValue();
        if (!(number >= low && number <= high) || low == 0 && (number == low || number == high)) {
            throw new IllegalArgumentException();
        }
        return number;
    }

    private static long whole(Value value, long low, long high) {
        long number = number(value).longValueExact();
        if (number < low || number > high) {
            throw new IllegalArgumentException();
        }
        return number;
    }

    private static String page(Value value) {
        for (String size : List.of("A4", "Letter")) {
            if (size.equalsIgnoreCase(word(value))) {
                return size;
            }
        }
        throw new IllegalArgumentException();
    }

    private static String word(Value value) {
        if (value.token() != JsonToken.VALUE_STRING) {
            throw new IllegalArgumentException();
        }
        return value.text();
    }

    private static BigDecimal number(Value value) {
        if (!value.token().isNumeric()) {
            throw new IllegalArgumentException();
        }
        return new BigDecimal(value.text());
    }

    private static String advice(String key) {
        return Nearest.to(key, KEYS).map(near -> "Did you mean " + near + "? ").orElse("") + "There are "
                + String.join(", ", KEYS);
    }

    private Refused refused(String table, String key, String problem, String advice) {
        int own = line(table, key);
        int line = own > 0 || table.isEmpty() ? own : line("", table); // a table may be written in one line
        return new Refused(file + (line > 0 ? ", line " + line : "") + ": \"" + key + "\" " + problem + ". " + advice);
    }

    /** Where a key stands, from 1; 0 where it is written in a way that is not looked for. */
    private int line(String table, String key) {
        String here = "";
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            String bare = line.strip();
            if (bare.startsWith("[")) {
                here = bare.replaceAll("[\\[\\]\"' ]", "");
                if (table.isEmpty() && (here.equals(key) || here.startsWith(key + "."))) {
                    return number;
                }
            } else if (here.equals(table) || here.equals("codes." + table)) {
                String left = keyOf(bare);
                if (left != null && (left.equals(key) || left.startsWith(key + "."))) {
                    return number;
                }
            }
        }
        return 0;
    }

    private static @Nullable String keyOf(String line) {
        int equals = line.indexOf('=');
        if (equals < 0 || line.startsWith("#")) {
            return null;
        }
        String key = line.substring(0, equals).strip();
        boolean quoted = key.length() > 1 && (key.startsWith("\"") || key.startsWith("'"));
        return quoted ? key.substring(1, key.length() - 1) : key;
    }
}
