package org.salvedge.shop;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Kinds of parts that are taken out of sets or bought. */
public enum PartKind implements Coded {
    POWER_BOARD,
    MAIN_BOARD,
    TIMING_BOARD,
    LED_STRIPS,
    LED_DRIVER,
    PANEL,
    FILM,
    STAND,
    REMOTE,
    SPEAKERS,
    OTHER;

    /** Boards and strips that a set with broken glass usually keeps whole. */
    public static final List<PartKind> BEHIND_THE_GLASS =
            List.of(MAIN_BOARD, POWER_BOARD, TIMING_BOARD, LED_STRIPS, LED_DRIVER);

    private static final Map<Fix, PartKind> NEEDED = Map.of(
            Fix.TIMING_BOARD_SWAP, TIMING_BOARD,
            Fix.LED_STRIPS, LED_STRIPS,
            Fix.LED_DRIVER, LED_DRIVER,
            Fix.POWER_BOARD_REPAIR, POWER_BOARD,
            Fix.MAIN_BOARD_SWAP, MAIN_BOARD,
            Fix.PANEL_SWAP, PANEL,
            Fix.REBOND_FILM, FILM);

    /** The part that a fix is about; null where it needs none. */
    public static @Nullable PartKind neededBy(Fix fix) {
        return NEEDED.get(fix);
    }

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
