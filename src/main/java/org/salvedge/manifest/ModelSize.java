package org.salvedge.manifest;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Quantity;

/** The screen size that most makers put into the model number. */
final class ModelSize {
    private static final Set<Integer> SIZES = Set.of(
            19, 20, 22, 24, 26, 27, 28, 29, 30, 32, 37, 39, 40, 42, 43, 46, 47, 48, 49, 50, 51, 52, 54, 55, 58, 60, 64,
            65, 70, 75, 77, 78, 80, 82, 83, 84, 85, 86, 88, 90, 92, 95, 97, 98, 100, 105, 110, 115);
    private static final Pattern DIGITS = Pattern.compile("\\d+");

    private ModelSize() {}

    /** The first two digits that are a usual size, digits that stand alone before those that begin a longer number. */
    static @Nullable Quantity of(@Nullable String model) {
        if (model == null) {
            return null;
        }
        Matcher m = DIGITS.matcher(model);
        int begun = 0;
        while (m.find()) {
            String run = m.group();
            if (run.length() < 2 || run.length() > 6) {
                continue;
            }
            int size = Integer.parseInt(run.substring(0, 2));
            if (SIZES.contains(size)) {
                if (run.length() == 2) {
                    return Quantity.of(size);
                }
                begun = begun == 0 ? size : begun;
            }
        }
        return begun == 0 ? null : Quantity.of(begun);
    }
}
