package org.salvedge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;

/** What a code means stands in several packages; a new one is missing nowhere, unless it is left out there on purpose. */
class BuiltInCodesTest {
    private enum Kind {
        FAULT(Fault.class),
        FIX(Fix.class),
        CLAIM(Claim.class);

        private final Class<?> type;

        Kind(Class<?> type) {
            this.type = type;
        }

        private Set<String> codes() {
            Map<? extends Coded, String> builtIn = switch (this) {
                case FAULT -> Codes.BUILT_IN.faults();
                case FIX -> Codes.BUILT_IN.fixes();
                case CLAIM -> Codes.BUILT_IN.claims();
            };
            Set<String> codes = new TreeSet<>();
            builtIn.keySet().forEach(code -> codes.add(code.code()));
            return codes;
        }
    }

    /** Every place that says something of single codes; one line a place. */
    private enum Place {
        ASSUMED_AT_BENCH(Kind.FAULT, "worth.Assumed", "FAULTS", false, "its share, chance, minutes, parts"),
        ASSUMED_CLAIMS(
                Kind.CLAIM,
                "worth.Assumed",
                "POINTS_TO",
                false,
                "the faults that it points to",
                "cracked",
                "other",
                "untested"),
        ASSUMED_POINTED_TO(
                Kind.FAULT,
                "worth.Assumed",
                "POINTS_TO",
                true,
                "the claims that point to it",
                "panel_broken", // brokenLogit
                "unknown"),
        USUAL_FIX(Kind.FAULT, "bench.UsualFix", "COMMON", false, "the fix of common practice", "unknown"),
        USUAL_FOR(
                Kind.FIX,
                "bench.UsualFix",
                "COMMON",
                true,
                "the fault that it is common practice for",
                "led_driver",
                "panel_swap",
                "reseat_cable"),
        PART_NEEDED(
                Kind.FIX,
                "shop.PartKind",
                "NEEDED",
                false,
                "the part that it is about",
                "contact_mask",
                "none",
                "port_repair",
                "reflash",
                "reseat_cable"),
        CLAIM_TRUE(
                Kind.CLAIM,
                "yield.ClaimTruth",
                "MEANS",
                false,
                "the faults that make it true",
                "customer_return",
                "other",
                "untested"),
        CLAIM_OF_FAULT(Kind.FAULT, "yield.ClaimTruth", "MEANS", true, "the claims that it makes true", "unknown"),
        CLAIM_ORDER(Kind.CLAIM, "manifest.words.ClaimReader", "ORDER", false, "its place from worst to best");

        private final Kind kind;
        private final String owner;
        private final String field;
        private final boolean values;
        private final String says;
        private final String leftOut;

        /** @param values whether the codes are the values of that map, and not its keys */
        Place(Kind kind, String owner, String field, boolean values, String says, String... leftOut) {
            this.kind = kind;
            this.owner = owner;
            this.field = field;
            this.values = values;
            this.says = says;
            this.leftOut = String.join(" ", leftOut);
        }

        /** Codes of the kind that are there. */
        private Set<String> known() throws ReflectiveOperationException {
            Field at = Class.forName("org.salvedge." + owner).getDeclaredField(field);
            at.setAccessible(true);
            Object held = at.get(null);
            Collection<?> codes =
                    held instanceof Map<?, ?> map ? values ? map.values() : map.keySet() : (Collection<?>) held;
            Set<String> known = new TreeSet<>();
            codes.stream().flatMap(Place::single).forEach(known::add);
            return known;
        }

        private static Stream<String> single(Object held) {
            if (held instanceof Map<?, ?> map) {
                return map.keySet().stream().flatMap(Place::single);
            }
            if (held instanceof Collection<?> all) {
                return all.stream().flatMap(Place::single);
            }
            return Stream.of(held instanceof Coded coded ? coded.code() : held.toString());
        }

        /** What is wrong, in words that say what to do. */
        private List<String> mistakes(Set<String> builtIn) throws ReflectiveOperationException {
            List<String> mistakes = new ArrayList<>();
            Set<String> known = known();
            List<String> left = List.of(leftOut.split(" "));
            String what = kind.name().toLowerCase(java.util.Locale.ROOT) + " ";
            for (String code : builtIn) {
                if (!known.contains(code) && !left.contains(code)) {
                    mistakes.add(what + code + ": org.salvedge." + owner + "." + field + " does not have it (" + says
                            + "). Add it there, or leave it out on purpose: in this test, at " + name());
                } else if (known.contains(code) && left.contains(code)) {
                    mistakes.add(what + code + " is in org.salvedge." + owner + "." + field
                            + " and said to be left out there: take it out of this test, at " + name());
                }
            }
            for (String code : known) {
                if (!builtIn.contains(code)) {
                    mistakes.add(what + code + " of org.salvedge." + owner + "." + field + " is no built-in code");
                }
            }
            return mistakes;
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyBuiltInCodeHasItsPlaceOrIsLeftOutOnPurpose(Place place) throws ReflectiveOperationException {
        assertThat(place.mistakes(place.kind.codes())).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void aNewCodeIsMissedByName(Place place) throws ReflectiveOperationException {
        Set<String> more = new TreeSet<>(place.kind.codes());
        more.add("water_damage");
        assertThat(place.mistakes(more))
                .singleElement()
                .asString()
                .contains("water_damage: org.salvedge." + place.owner + "." + place.field + " does not have it");

        Set<String> fewer = new TreeSet<>(place.kind.codes());
        String gone = place.known().iterator().next();
        fewer.remove(gone);
        assertThat(place.mistakes(fewer))
                .containsExactly(place.kind.name().toLowerCase(java.util.Locale.ROOT) + " " + gone + " of org.salvedge."
                        + place.owner + "." + place.field + " is no built-in code");
    }

    @ParameterizedTest
    @EnumSource
    void everyConstantIsListedAsBuiltIn(Kind kind) throws IllegalAccessException {
        Set<String> constants = new TreeSet<>();
        for (Field field : kind.type.getDeclaredFields()) {
            if (Modifier.isStatic(field.getModifiers()) && field.getType() == kind.type) {
                constants.add(((Coded) field.get(null)).code());
            }
        }
        assertThat(constants).as("constants of %s, and its BUILT_IN", kind.type).isEqualTo(kind.codes());
    }

    @Test
    void everyClaimHasRemarksThatMeanItInEachLanguage() throws IOException {
        for (String language : List.of("english", "french", "german", "spanish")) {
            Set<String> meant = new TreeSet<>();
            try (InputStream in = getClass().getResourceAsStream("/claims/" + language + ".tsv")) {
                new String(in.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .forEach(line -> meant.add(line.split("\t")[0]));
            }
            assertThat(meant)
                    .as("claims of src/test/resources/claims/%s.tsv", language)
                    .containsAll(Kind.CLAIM.codes());
        }
    }
}
