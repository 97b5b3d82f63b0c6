package org.salvedge.shop;

/** The shop's label on a set, such as L0042-007. */
public record UnitId(String value) implements Comparable<UnitId> {
    public UnitId {
        Text.requireLabel(value);
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
