package org.salvedge.worth;

import org.salvedge.shop.Coded;

/** What the shop does with a set. */
public enum Route implements Coded {
    FIX("fix"),
    SELL_AS_IS("sell as is"),
    STRIP("strip"),
    RECYCLE("recycle");

    private final String words;

    Route(String words) {
        this.words = words;
    }

    @Override
    public String code() {
        return words;
    }
}
