package org.salvedge.ledger;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Collection;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/** What must hold of one fact by itself: days not in the future, amounts in the right currency, codes known, clean text. */
record FactCheck(LocalDate today, Currency book, Codes codes) {
    /** @throws BadCell if a value cannot be kept */
    <F extends Fact> void check(F fact) {
        for (Column<F, ?> column : Tables.of(fact).columns()) {
            Object value = column.of(fact);
            if (value != null) {
                check(column, value, fact);
            }
        }
    }

    private void check(Column<?, ?> column, Object value, Fact fact) {
        if (value instanceof LocalDate day) {
            checkDay(column, day);
        } else if (value instanceof LocalDateTime time) {
            checkDay(column, time.toLocalDate());
        } else if (value instanceof Money money) {
            Currency wanted =
                    fact instanceof Lot lot ? lot.currency() : column.equals(Tables.UNITS.asking) ? null : book;
            checkMoney(money, wanted);
        } else if (value instanceof Quantity quantity) {
            checkSize(quantity.millionths());
        } else if (value instanceof String text) {
            Parse.text(text);
        } else if (value instanceof Fault) {
            checkCode(value, codes.faults().keySet());
        } else if (value instanceof Fix) {
            checkCode(value, codes.fixes().keySet());
        } else if (value instanceof Claim) {
            checkCode(value, codes.claims().keySet());
        }
        if (fact instanceof Lot lot && column.equals(Tables.LOTS.currency)) {
            checkRate(lot.currency(), lot.rate(), book);
        }
    }

    private void checkDay(Column<?, ?> column, LocalDate day) {
        if (day.toEpochDay() < Types.FIRST_DAY || day.toEpochDay() > Types.LAST_DAY) {
            throw new BadCell(day + " is not a date that can be kept", "Check the year.");
        }
        if (!column.equals(Tables.UNITS.expectedOn) && day.isAfter(today)) {
            throw future(day, today);
        }
    }

    static BadCell future(LocalDate day, LocalDate today) {
        return new BadCell(day + " is in the future", "Today is " + today + "; check the date.");
    }

    private static void checkMoney(Money money, @Nullable Currency wanted) {
        if (wanted != null && !money.currency().equals(wanted)) {
            throw new BadCell(
                    money + " is in " + money.currency() + " where amounts are in " + wanted, "Convert it first.");
        }
        checkSize(money.minor());
    }

    private static void checkSize(long value) {
        if (value > Types.LARGEST || value < -Types.LARGEST) {
            throw new BadCell("the number is too large", "Check it.");
        }
    }

    /** @throws BadCell where a foreign currency has no rate, or the book's own has one that is not 1 */
    static void checkRate(Currency currency, @Nullable BigDecimal rate, Currency book) {
        boolean own = currency.equals(book);
        if (!own && rate == null) {
            throw new BadCell(
                    currency + " is not the book's currency " + book + " and there is no rate",
                    "Give the rate: how many " + book + " one " + currency + " is.");
        }
        if (own && rate != null && rate.compareTo(BigDecimal.ONE) != 0) {
            throw new BadCell(
                    "the rate is " + rate.toPlainString() + " though the amounts are in the book's currency " + book,
                    "Leave the rate empty, or mend the currency.");
        }
    }

    private static void checkCode(Object code, Collection<? extends Coded> known) {
        if (!known.contains(code)) {
            throw new BadCell("\"" + code + "\" is not a known code", Labels.advice(known));
        }
    }
}
