package org.salvedge.shop;

import java.math.BigDecimal;
import java.util.Currency;
import org.jspecify.annotations.Nullable;

/** Checks that several records share. */
final class Amounts {
    private Amounts() {}

    static BigDecimal orZero(@Nullable Money money) {
        return money == null ? BigDecimal.ZERO : money.amount();
    }

    static void requireNotNegative(String column, @Nullable Money money) {
        if (money != null && money.isNegative()) {
            throw new IllegalArgumentException(column + " must not be negative, but is " + money);
        }
    }

    static void requireNotNegative(String column, @Nullable Quantity quantity) {
        if (quantity != null && quantity.isNegative()) {
            throw new IllegalArgumentException(column + " must not be negative, but is " + quantity);
        }
    }

    static void requireCurrency(Currency currency, @Nullable Money... amounts) {
        for (Money money : amounts) {
            if (money != null && !money.currency().equals(currency)) {
                throw new IllegalArgumentException(
                        "an amount in " + money.currency() + " where " + currency + " is kept");
            }
        }
    }
}
