package org.salvedge.report;

/** What a column holds, and with it the class of its values, their side and their digits on the screen. A value may be null. */
public enum Kind {
    /** Text or a code: a {@code String}, anything {@link org.salvedge.shop.Coded}, a {@code UnitId} or {@code LotId}. */
    TEXT,
    /** As {@link #TEXT}, but what a row is known by: on a narrow screen other columns go before it is cut. */
    KEY,
    /** A whole number: {@code Integer} or {@code Long}. Thousands grouped on the screen. */
    COUNT,
    /** An exact amount, {@code Money}, with all its digits. */
    MONEY,
    /** A sum of money of which the screen needs no more than whole units: {@code Money}. */
    MONEY_TOTAL,
    /** An average amount in units of the currency, unrounded: {@code Double}; one digit less than the currency's on the screen. */
    MONEY_EACH,
    /** A fraction: {@code Double}; two digits on the screen. */
    RATIO,
    /** A fraction with its interval: {@link Estimate}. */
    INTERVAL,
    /** Minutes: {@code Double}; whole on the screen. */
    MINUTES,
    /** Any other number: {@code Double}, {@code BigDecimal} or {@code Quantity}; up to two digits on the screen. */
    NUMBER,
    /** {@code LocalDate} or {@code LocalDateTime}. */
    DATE,
    /** {@code Boolean}: yes, no. */
    YES_NO,
    /** A share from 0 to 1 drawn as a bar on the screen, a number elsewhere: {@code Double}. */
    BAR;

    boolean right() {
        return !isText() && this != DATE && this != YES_NO && this != BAR;
    }

    boolean isText() {
        return this == TEXT || this == KEY;
    }

    boolean isMoney() {
        return this == MONEY || this == MONEY_TOTAL || this == MONEY_EACH;
    }
}
