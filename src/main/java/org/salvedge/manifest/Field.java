package org.salvedge.manifest;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a column of a seller's list can mean. */
enum Field {
    MAKER,
    MODEL,
    /** Maker and model in one text. */
    MAKER_MODEL,
    /** The seller's own number of an article: a model only where nothing better is there. */
    REFERENCE,
    /** Free text that may hold maker, model, size and symptom. */
    DESCRIPTION,
    INCHES,
    CENTIMETRES,
    MILLIMETRES,
    SERIAL,
    QUANTITY,
    CLAIMED,
    ASKING,
    ASKING_LINE,
    RETAIL,
    RETAIL_LINE,
    CATEGORY,
    /** Needed by nobody: pallet, barcode, weight. */
    OTHER;

    /** Name in the answer of preview; null for fields that it does not speak of. */
    @Nullable
    String answer() {
        return switch (this) {
            case MAKER -> "maker";
            case MODEL -> "model";
            case MAKER_MODEL, DESCRIPTION, REFERENCE, CATEGORY, OTHER -> null;
            case INCHES, CENTIMETRES, MILLIMETRES -> "inches";
            case SERIAL -> "serial";
            case QUANTITY -> "quantity";
            case CLAIMED -> "claimed";
            case ASKING, ASKING_LINE, RETAIL, RETAIL_LINE -> "asking";
        };
    }

    boolean isPrice() {
        return this == ASKING || this == ASKING_LINE || this == RETAIL || this == RETAIL_LINE;
    }

    boolean isSize() {
        return this == INCHES || this == CENTIMETRES || this == MILLIMETRES;
    }

    static Field of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
