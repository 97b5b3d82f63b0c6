package org.salvedge.shop;

import org.jspecify.annotations.Nullable;

/** The shop's label on a set, such as L0042-007. */
public record UnitId(String value) implements Comparable<UnitId> {
    public UnitId {
        Text.requireLabel(value);
    }

    // By hand: the compiler's own are linked at their first call, which every start of the program would wait for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof UnitId that && value.equals(that.value);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    @Override
    public int compareTo(UnitId other) {
        return Text.CODE_POINTS.compare(value, other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
