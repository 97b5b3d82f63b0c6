package org.salvedge.cli;

import java.math.BigDecimal;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;

/** An amount as typed, before it is known in which currency it is. Never negative. */
record Amount(BigDecimal number) {
    /** @throws Usage if the currency has fewer digits */
    Money in(Currency currency, String option) {
        try {
            return Money.of(number, currency);
        } catch (ArithmeticException e) {
            int digits = currency.getDefaultFractionDigits();
            throw new Usage(option + ": \"" + number.toPlainString() + "\" is too large or has more decimals than "
                    + currency + ", which has " + (digits == 0 ? "none" : digits));
        }
    }

    static @Nullable Money orNull(@Nullable Amount amount, Currency currency, String option) {
        return amount == null ? null : amount.in(currency, option);
    }
}
