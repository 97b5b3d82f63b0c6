package org.salvedge.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.shop.Text;

/**
 * Parts in stock: not used, not gone, not known to be bad. A part fits a family when it came out of a set of it, or bears the
 * number of one that did.
 */
public final class PartsAtHand {
    private final Map<List<Object>, List<Part>> byFamily = new HashMap<>();

    private PartsAtHand() {}

    /** Family of a set by its label; null = not known. */
    public interface FamilyOf {
        @Nullable
        String family(String unit);
    }

    public static PartsAtHand of(List<Part> parts, FamilyOf families) {
        PartsAtHand stock = new PartsAtHand();
        Map<List<Object>, List<String>> numbered = new HashMap<>();
        for (Part p : parts) {
            String family = family(p, families);
            if (family != null && p.number() != null) {
                numbered.computeIfAbsent(List.of(p.kind(), p.number()), k -> new ArrayList<>())
                        .add(family);
            }
        }
        for (Part p : parts) {
            if (p.attempt() != null || p.goneOn() != null || p.tested() == PartTest.BAD) {
                continue;
            }
            List<String> fits = new ArrayList<>();
            String family = family(p, families);
            if (family != null) {
                fits.add(family);
            }
            if (p.number() != null) {
                fits.addAll(numbered.getOrDefault(List.of(p.kind(), p.number()), List.of()));
            }
            fits.stream()
                    .distinct()
                    .forEach(f -> stock.byFamily
                            .computeIfAbsent(List.of(p.kind(), f), k -> new ArrayList<>())
                            .add(p));
        }
        stock.byFamily.values().forEach(l -> l.sort(Comparator.comparing(Part::part, Text.CODE_POINTS)));
        return stock;
    }

    private static @Nullable String family(Part p, FamilyOf families) {
        return p.fromUnit() == null ? null : families.family(p.fromUnit().value());
    }

    /** Parts of a kind that fit a family, by label. */
    public List<Part> fitting(PartKind kind, String family) {
        return byFamily.getOrDefault(List.of(kind, family), List.of());
    }
}
