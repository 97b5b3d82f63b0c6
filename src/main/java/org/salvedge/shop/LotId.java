package org.salvedge.shop;

/** The shop's name for a lot, such as L0042. */
public record LotId(String value) implements Comparable<LotId> {
    public LotId {
        Text.requireLabel(value);
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
