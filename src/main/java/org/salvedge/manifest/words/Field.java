package org.salvedge.manifest.words;

import java.util.Locale;

/** What a column of a manifest says about a set. */
public enum Field {
    MAKER,
    MODEL,
    /** Maker, model and perhaps size and symptom in one text. */
    DESCRIPTION,
    INCHES,
    SERIAL,
    QUANTITY,
    CLAIM,
    /** What kind of goods it is. */
    KIND,
    ASK_UNIT,
    ASK_LINE,
    /** Asked, and the heading does not say whether for one or for the line. */
    ASK,
    RETAIL_UNIT,
    RETAIL_LINE,
    RETAIL,
    /** Nothing that is needed. */
    NONE;

    public boolean isPrice() {
        return compareTo(ASK_UNIT) >= 0 && compareTo(RETAIL) <= 0;
    }

    public boolean isRetail() {
        return this == RETAIL_UNIT || this == RETAIL_LINE || this == RETAIL;
    }

    public boolean isForLine() {
        return this == ASK_LINE || this == RETAIL_LINE;
    }

    /** Several columns may say it. */
    public boolean isShared() {
        return this == CLAIM || this == NONE;
    }

    /** The name under which {@code shop.toml} knows it. */
    public String key() {
        return switch (this) {
            case CLAIM -> "claimed";
            case ASK -> "asking";
            case ASK_UNIT -> "asking_unit";
            case ASK_LINE -> "asking_line";
            case RETAIL, RETAIL_UNIT, RETAIL_LINE -> "retail";
            default -> name().toLowerCase(Locale.ROOT);
        };
    }
}
