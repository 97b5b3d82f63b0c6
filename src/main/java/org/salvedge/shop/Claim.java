package org.salvedge.shop;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Symptom class that the seller claims. A shop may add its own in {@code shop.toml}. */
public record Claim(String code) implements Coded, Comparable<Claim> {
    public static final Claim HORIZONTAL_LINES = new Claim("horizontal_lines");
    public static final Claim VERTICAL_LINES = new Claim("vertical_lines");
    public static final Claim HALF_SCREEN = new Claim("half_screen");
    public static final Claim NO_PICTURE = new Claim("no_picture");
    public static final Claim DEAD = new Claim("dead");
    public static final Claim DIM_PATCHY = new Claim("dim_patchy");
    public static final Claim BOOT_LOOP = new Claim("boot_loop");
    public static final Claim NO_SOUND = new Claim("no_sound");
    public static final Claim CRACKED = new Claim("cracked");
    public static final Claim UNTESTED = new Claim("untested");
    public static final Claim CUSTOMER_RETURN = new Claim("customer_return");
    public static final Claim WORKING = new Claim("working");
    public static final Claim OTHER = new Claim("other");

    /** The codes there from the start, in order, each with its meaning. */
    public static final Map<Claim, String> BUILT_IN = CodeWords.ordered(
            Map.entry(HORIZONTAL_LINES, "horizontal lines or bands"),
            Map.entry(VERTICAL_LINES, "vertical lines or bands"),
            Map.entry(HALF_SCREEN, "half of the picture dark or wrong"),
            Map.entry(NO_PICTURE, "sound only"),
            Map.entry(DEAD, "does not turn on"),
            Map.entry(DIM_PATCHY, "dim or uneven light"),
            Map.entry(BOOT_LOOP, "restarts or hangs at the logo"),
            Map.entry(NO_SOUND, "picture only"),
            Map.entry(CRACKED, "broken glass"),
            Map.entry(UNTESTED, "not tested"),
            Map.entry(CUSTOMER_RETURN, "returned by a customer"),
            Map.entry(WORKING, "said to work"),
            Map.entry(OTHER, "anything else"));

    /** @throws IllegalArgumentException if it is not a lower-case word */
    public Claim {
        CodeWords.require(code);
    }

    // By hand: the compiler's own are linked at their first call, which every start of the program would wait for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Claim that && code.equals(that.code);
    }

    @Override
    public int hashCode() {
        return code.hashCode();
    }

    @Override
    public int compareTo(Claim other) {
        return code.compareTo(other.code);
    }

    @Override
    public String toString() {
        return code;
    }
}
