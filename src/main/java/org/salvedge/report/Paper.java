package org.salvedge.report;

import java.time.LocalDate;
import java.util.Currency;

/**
 * What stands on every page of a workbook, and what it is printed on.
 *
 * @param shop name of the shop, for the footer
 * @param printedOn day of printing
 * @param size {@code A4} or {@code Letter}
 * @param currency of the amounts
 */
public record Paper(String shop, LocalDate printedOn, String size, Currency currency) {
    boolean letter() {
        return size.equalsIgnoreCase("Letter");
    }

    int moneyDigits() {
        return Math.max(0, currency.getDefaultFractionDigits());
    }
}
