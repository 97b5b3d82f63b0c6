package org.salvedge.worth.study;

/** A way to say what a lot will bring. */
interface Forecaster {
    String name();

    /** Learns what it can from the shop's history. */
    Fitted fit(ShopSnapshot shop);

    /** What was learnt, ready for any lot. */
    interface Fitted {
        Forecast forecast(Offer lot);
    }
}
