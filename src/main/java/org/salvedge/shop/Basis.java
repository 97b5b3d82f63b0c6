package org.salvedge.shop;

/** How a lot's landed cost is shared: equally, by screen area, by the seller's asking price, or as given set by set. */
public enum Basis implements Coded {
    EQUAL,
    AREA,
    VALUE,
    GIVEN;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
