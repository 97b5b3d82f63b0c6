package org.salvedge.shop;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A mask recipe: which contacts of a panel's ribbon were insulated, and how that turned out.
 *
 * @param contacts masked contacts by position on the ribbon, ascending, such as {@code 3 4 5 9}
 * @param signals their names, in the same order
 * @param used times used; null = 0
 * @param good times the picture was acceptable; null = 0
 */
public record Recipe(
        String panel,
        Side side,
        String contacts,
        @Nullable String signals,
        @Nullable Residual residualClose,
        @Nullable Residual residualViewing,
        @Nullable Integer used,
        @Nullable Integer good,
        @Nullable String note)
        implements Fact {
    private static final Pattern POSITIONS = Pattern.compile("[1-9][0-9]{0,2}( [1-9][0-9]{0,2})*");

    public Recipe {
        if (panel.isBlank()) {
            throw new IllegalArgumentException("a recipe needs a panel");
        }
        if (!POSITIONS.matcher(contacts).matches()) {
            throw new IllegalArgumentException("\"" + contacts + "\" is not a list of contacts, as in 3 4 5 9");
        }
        int u = used == null ? 0 : used;
        int g = good == null ? 0 : good;
        if (u < 0 || g < 0 || g > u) {
            throw new IllegalArgumentException("good (" + g + ") must lie between 0 and used (" + u + ")");
        }
    }
}
