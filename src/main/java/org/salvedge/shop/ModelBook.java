package org.salvedge.shop;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What the shop knows of model numbers: family, maker and size. The family of a model is that of the longest beginning in
 * {@code shop.toml} that fits; else of the same model in the record; else of the models in the record that share the longest
 * beginning with it (at least four characters, a digit among them); else its own. Letters' case, spaces and hyphens do not
 * count. Where the record names several families, the one of most sets counts, of equals the first by code points.
 */
public final class ModelBook {
    private static final int SHORTEST_SHARED = 4;

    private final NavigableMap<String, String> given = new TreeMap<>();
    private final NavigableMap<String, Seen> seen = new TreeMap<>();
    private final Map<String, Map<String, Integer>> spellings = new HashMap<>();
    private final Map<String, String> plainNames = new HashMap<>();

    /** What the record says of one model: each value with the number of sets. */
    private record Seen(Map<String, Integer> families, Map<String, Integer> makers, Map<Long, Integer> inches) {
        Seen() {
            this(new HashMap<>(), new HashMap<>(), new HashMap<>());
        }
    }

    /** @param families beginning of a model number = family, as in {@code shop.toml} */
    public ModelBook(Map<String, String> families) {
        families.forEach((beginning, family) -> {
            if (canonical(beginning).isEmpty()) {
                throw new Refused("[families]: \"" + beginning + "\" is not the beginning of a model number");
            }
            given.put(canonical(beginning), family);
        });
    }

    /** A book of everything on record. */
    public static ModelBook of(Map<String, String> families, History history) {
        ModelBook book = new ModelBook(families);
        for (int set = 0; set < history.sets(); set++) {
            book.learn(
                    history.makers().text(history.setMaker(set)),
                    history.models().text(history.setModel(set)),
                    history.families().text(history.setFamily(set)),
                    history.setInches(set) < 0 ? null : new Quantity(history.setInches(set)));
        }
        return book;
    }

    /** Takes in one set of the record. */
    public void learn(String maker, String model, String family, @Nullable Quantity inches) {
        if (!maker.equals(TvSet.UNKNOWN)) {
            String name = plainNames.computeIfAbsent(maker, ModelBook::plain);
            spellings.computeIfAbsent(name, k -> new HashMap<>()).merge(maker, 1, Integer::sum);
        }
        String key = canonical(model);
        if (model.equals(TvSet.UNKNOWN) || key.isEmpty()) {
            return;
        }
        Seen s = seen.computeIfAbsent(key, k -> new Seen());
        s.families().merge(family, 1, Integer::sum);
        if (!maker.equals(TvSet.UNKNOWN)) {
            s.makers().merge(maker, 1, Integer::sum);
        }
        if (inches != null) {
            s.inches().merge(inches.millionths(), 1, Integer::sum);
        }
    }

    /** The family of a model. */
    public String family(String model) {
        String key = canonical(model);
        if (model.equals(TvSet.UNKNOWN) || key.isEmpty()) {
            return TvSet.UNKNOWN;
        }
        String entered = entered(model);
        if (entered != null) {
            return entered;
        }
        Seen same = seen.get(key);
        if (same != null) {
            return most(same.families(), Text.CODE_POINTS);
        }
        String shared = longestShared(key);
        if (shared == null) {
            return model;
        }
        Map<String, Integer> families = new HashMap<>();
        for (Seen s :
                seen.subMap(shared, true, shared + Character.MAX_VALUE, true).values()) {
            s.families().forEach((family, sets) -> families.merge(family, sets, Integer::sum));
        }
        return most(families, Text.CODE_POINTS);
    }

    /** The family that {@code shop.toml} gives a model; null where it has no entry. */
    public @Nullable String entered(String model) {
        String key = canonical(model);
        for (int end = key.length(); end > 0; end--) {
            String family = given.get(key.substring(0, end));
            if (family != null) {
                return family;
            }
        }
        return null;
    }

    /** The maker of the same model in the record, else unknown. */
    public String maker(String model) {
        Seen s = seen.get(canonical(model));
        return s == null || s.makers().isEmpty() ? TvSet.UNKNOWN : most(s.makers(), Text.CODE_POINTS);
    }

    /**
     * A maker's name as the record writes it: sellers' capitals and spaces do not make another maker. Of several spellings that of
     * most sets counts, of equals the first by code points; a maker that is not on record stays as it is written.
     */
    public String makerAsKnown(String maker) {
        Map<String, Integer> known = spellings.get(plain(maker));
        return known == null ? maker : most(known, Text.CODE_POINTS);
    }

    /** The size of the same model in the record; null where there is none. */
    public @Nullable Quantity inches(String model) {
        Seen s = seen.get(canonical(model));
        return s == null || s.inches().isEmpty() ? null : new Quantity(most(s.inches(), Comparator.naturalOrder()));
    }

    /** In order of text, the models that share the longest beginning stand next to where this one would. */
    private @Nullable String longestShared(String key) {
        String best = null;
        for (String neighbour : new String[] {seen.lowerKey(key), seen.higherKey(key)}) {
            if (neighbour == null) {
                continue;
            }
            int n = 0;
            while (n < Math.min(key.length(), neighbour.length()) && key.charAt(n) == neighbour.charAt(n)) {
                n++;
            }
            if (n >= SHORTEST_SHARED
                    && (best == null || n > best.length())
                    && key.substring(0, n).chars().anyMatch(Character::isDigit)) {
                best = key.substring(0, n);
            }
        }
        return best;
    }

    private static <T> T most(Map<T, Integer> counts, Comparator<? super T> order) {
        return counts.entrySet().stream()
                .max(Map.Entry.<T, Integer>comparingByValue().thenComparing(e -> e.getKey(), order.reversed()))
                .orElseThrow()
                .getKey();
    }

    private static String plain(String maker) {
        return maker.strip().replaceAll("\\s+", " ").toUpperCase(Locale.ROOT);
    }

    private static String canonical(String model) {
        StringBuilder out = new StringBuilder(model.length());
        for (char c : model.toUpperCase(Locale.ROOT).toCharArray()) {
            if (!Character.isWhitespace(c) && c != '-' && c != '_') {
                out.append(c);
            }
        }
        return out.toString();
    }
}
