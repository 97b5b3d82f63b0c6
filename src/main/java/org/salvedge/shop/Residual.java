package org.salvedge.shop;

/** What is left to see of a fault after a fix. */
public enum Residual implements Coded {
    NONE,
    FAINT,
    VISIBLE;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
