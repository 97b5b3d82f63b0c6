package org.salvedge.manifest;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Sellers' header words: which field a heading speaks of. A shop's own words go before those built in. */
final class ColumnWords {
    private static final Set<String> UNITS = Set.of(
            "eur", "euro", "euros", "gbp", "usd", "chf", "net", "netto", "brutto", "incl", "excl", "vat", "ht", "ttc",
            "mwst", "iva", "in", "tv", "the", "of", "per", "pro", "par", "por", "de", "du", "des", "del", "la", "le",
            "der", "die", "das", "est", "ca", "approx");

    private final Map<String, Field> words = new HashMap<>();

    /** @param own the shop's: a heading = a field of the answer, as {@code "Fehlerbild" = "claimed"} */
    ColumnWords(Map<String, String> own) {
        try (InputStream in = Objects.requireNonNull(ColumnWords.class.getResourceAsStream("columns.txt"));
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.startsWith("#") && line.contains(":")) {
                    Field field = Field.of(line.substring(0, line.indexOf(':')));
                    for (String w : line.substring(line.indexOf(':') + 1).split("\\|", -1)) {
                        words.putIfAbsent(Plain.of(w), field);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        own.forEach((heading, field) -> words.put(Plain.of(heading), Field.of(field)));
    }

    /** The field of a heading; null where it says nothing known. */
    @Nullable
    Field find(String heading) {
        String plain = Plain.of(heading);
        if (plain.isEmpty() || plain.length() > 60) {
            return null;
        }
        Field exact = words.get(plain);
        if (exact != null) {
            return withUnit(exact, plain);
        }
        StringBuilder kept = new StringBuilder();
        for (String w : plain.split(" ")) {
            if (!UNITS.contains(w) && !w.matches("cm|mm|zoll|inch|inches|pouces|pulgadas|[0-9]+")) {
                kept.append(kept.length() == 0 ? "" : " ").append(w);
            }
        }
        Field bare = words.get(kept.toString());
        return bare == null ? byLastWords(kept.toString(), plain) : withUnit(bare, plain);
    }

    /** A compound such as "TV screen size" or "current asking price": its longest known tail or head of at least two thirds. */
    private @Nullable Field byLastWords(String kept, String plain) {
        String[] w = kept.split(" ");
        if (w.length < 2 || w.length > 5) {
            return null;
        }
        for (int drop = 1; drop < w.length; drop++) {
            String tail = String.join(" ", java.util.Arrays.copyOfRange(w, drop, w.length));
            String head = String.join(" ", java.util.Arrays.copyOfRange(w, 0, w.length - drop));
            Field f = words.get(tail);
            f = f == null ? words.get(head) : f;
            if (f != null && f != Field.OTHER) {
                return withUnit(f, plain);
            }
        }
        return null;
    }

    private static Field withUnit(Field field, String plain) {
        if (field == Field.INCHES) {
            if ((" " + plain + " ").contains(" cm ")) {
                return Field.CENTIMETRES;
            }
            if ((" " + plain + " ").contains(" mm ")) {
                return Field.MILLIMETRES;
            }
        }
        return field;
    }
}
