package org.salvedge.shop;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Class of the fault found at the bench. A shop may add its own in {@code shop.toml}. */
public record Fault(String code) implements Coded, Comparable<Fault> {
    public static final Fault ROW_DRIVE = new Fault("row_drive");
    public static final Fault COLUMN_DRIVE = new Fault("column_drive");
    public static final Fault TIMING_BOARD = new Fault("timing_board");
    public static final Fault BACKLIGHT = new Fault("backlight");
    public static final Fault POWER_BOARD = new Fault("power_board");
    public static final Fault MAIN_BOARD = new Fault("main_board");
    public static final Fault FIRMWARE = new Fault("firmware");
    public static final Fault PANEL_BROKEN = new Fault("panel_broken");
    public static final Fault PORTS_AUDIO = new Fault("ports_audio");
    public static final Fault NONE_FOUND = new Fault("none_found");
    public static final Fault UNKNOWN = new Fault("unknown");

    /** The codes there from the start, in order, each with its meaning. */
    public static final Map<Fault, String> BUILT_IN = CodeWords.ordered(
            Map.entry(ROW_DRIVE, "horizontal line fault, gate side"),
            Map.entry(COLUMN_DRIVE, "vertical line fault, source side"),
            Map.entry(TIMING_BOARD, "timing-control board or its supply"),
            Map.entry(BACKLIGHT, "LED strips or their driver"),
            Map.entry(POWER_BOARD, "power board or fuse"),
            Map.entry(MAIN_BOARD, "main board"),
            Map.entry(FIRMWARE, "software or its memory"),
            Map.entry(PANEL_BROKEN, "cracked or leaking glass"),
            Map.entry(PORTS_AUDIO, "ports, wireless or sound"),
            Map.entry(NONE_FOUND, "works as it is"),
            Map.entry(UNKNOWN, "not found out"));

    /** @throws IllegalArgumentException if it is not a lower-case word */
    public Fault {
        CodeWords.require(code);
    }

    // By hand: the compiler's own are linked at their first call, which every start of the program would wait for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Fault that && code.equals(that.code);
    }

    @Override
    public int hashCode() {
        return code.hashCode();
    }

    @Override
    public int compareTo(Fault other) {
        return code.compareTo(other.code);
    }

    @Override
    public String toString() {
        return code;
    }
}
