package org.salvedge.manifest;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Quantity;

/**
 * One physical set of a manifest. Null = not said or not readable.
 *
 * @param line row of its sheet, from 1
 * @param inches screen diagonal
 * @param claimedText the seller's own words
 * @param claimSureness how sure the reading of the claim is, 0 to 1
 * @param asking per set, in the file's own currency
 */
public record ListedSet(
        String sheet,
        int line,
        @Nullable String maker,
        @Nullable String model,
        @Nullable Quantity inches,
        @Nullable String serial,
        Claim claimed,
        @Nullable String claimedText,
        double claimSureness,
        @Nullable BigDecimal asking) {}
