package org.salvedge.shop;

/**
 * How a set that passed looks: A nothing seen close up or at the design viewing distance, B nothing seen at the design viewing
 * distance, C seen, and told to the buyer.
 */
public enum Grade implements Coded {
    A,
    B,
    C;

    @Override
    public String code() {
        return name();
    }
}
