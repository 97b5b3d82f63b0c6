package org.salvedge.shop;

/** What a test of a part said. */
public enum PartTest implements Coded {
    GOOD,
    BAD,
    UNTESTED;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
