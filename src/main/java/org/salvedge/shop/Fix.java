package org.salvedge.shop;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The fix used in a turn at the bench. A shop may add its own in {@code shop.toml}. */
public record Fix(String code) implements Coded, Comparable<Fix> {
    public static final Fix CONTACT_MASK = new Fix("contact_mask");
    public static final Fix RESEAT_CABLE = new Fix("reseat_cable");
    public static final Fix REBOND_FILM = new Fix("rebond_film");
    public static final Fix TIMING_BOARD_SWAP = new Fix("timing_board_swap");
    public static final Fix LED_STRIPS = new Fix("led_strips");
    public static final Fix LED_DRIVER = new Fix("led_driver");
    public static final Fix POWER_BOARD_REPAIR = new Fix("power_board_repair");
    public static final Fix MAIN_BOARD_SWAP = new Fix("main_board_swap");
    public static final Fix REFLASH = new Fix("reflash");
    public static final Fix PANEL_SWAP = new Fix("panel_swap");
    public static final Fix PORT_REPAIR = new Fix("port_repair");
    public static final Fix NONE = new Fix("none");

    /** The codes there from the start, in order, each with its meaning. */
    public static final Map<Fix, String> BUILT_IN = CodeWords.ordered(
            Map.entry(CONTACT_MASK, "row-signal contacts of one side's ribbon insulated"),
            Map.entry(RESEAT_CABLE, "cable or ribbon reseated"),
            Map.entry(REBOND_FILM, "film rebonded"),
            Map.entry(TIMING_BOARD_SWAP, "timing board changed"),
            Map.entry(LED_STRIPS, "LED strips changed"),
            Map.entry(LED_DRIVER, "LED driver mended or changed"),
            Map.entry(POWER_BOARD_REPAIR, "power board mended or changed"),
            Map.entry(MAIN_BOARD_SWAP, "main board changed"),
            Map.entry(REFLASH, "software written again"),
            Map.entry(PANEL_SWAP, "panel changed"),
            Map.entry(PORT_REPAIR, "port mended"),
            Map.entry(NONE, "diagnosed only"));

    /** @throws IllegalArgumentException if it is not a lower-case word */
    public Fix {
        CodeWords.require(code);
    }

    // By hand: the compiler's own are linked at their first call, which every start of the program would wait for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Fix that && code.equals(that.code);
    }

    @Override
    public int hashCode() {
        return code.hashCode();
    }

    @Override
    public int compareTo(Fix other) {
        return code.compareTo(other.code);
    }

    @Override
    public String toString() {
        return code;
    }
}
