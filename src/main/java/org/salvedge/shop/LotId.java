package org.salvedge.shop;

import org.jspecify.annotations.Nullable;

/** The shop's name for a lot, such as L0042. */
public record LotId(String value) implements Comparable<LotId> {
    public LotId {
        Text.requireLabel(value);
    }

    // By hand: the compiler's own are linked at their first call, which every start of the program would wait for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LotId that && value.equals(that.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    @Override
    public int compareTo(LotId other) {
        return Text.CODE_POINTS.compare(value, other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
