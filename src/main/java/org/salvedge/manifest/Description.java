package org.salvedge.manifest;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Quantity;

/**
 * What one text says of a set.
 *
 * @param inches where the text gives a size with its unit
 * @param rest what stands behind maker, model and size: the seller's words on the set's state; "" = nothing
 */
record Description(
        @Nullable String maker,
        @Nullable String model,
        @Nullable Quantity inches,
        String rest) {}
