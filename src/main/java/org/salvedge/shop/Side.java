package org.salvedge.shop;

/** A short side of the panel, seen from the front. */
public enum Side implements Coded {
    LEFT,
    RIGHT;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
