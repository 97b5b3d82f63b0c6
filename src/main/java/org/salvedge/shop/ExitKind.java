package org.salvedge.shop;

/** How a set leaves the shop: sold as a set, stripped (sold as parts), recycled, returned to the seller, or lost. */
public enum ExitKind implements Coded {
    SOLD,
    STRIPPED,
    RECYCLED,
    RETURNED,
    LOST;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
