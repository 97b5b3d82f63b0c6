package org.salvedge.shop;

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

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
