package org.salvedge.report;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Coded;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.UnitId;

/** A value of a table as the screen shows it. */
final class CellText {
    private static final int BAR_CELLS = 10;
    private static final int RATIO_DECIMALS = 2;
    private static final DateTimeFormatter TO_THE_MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private final Screen screen;
    private final int moneyDigits;

    /** @param moneyDigits minor digits of the currency of amounts that are averages */
    CellText(Screen screen, int moneyDigits) {
        this.screen = screen;
        this.moneyDigits = moneyDigits;
    }

    String of(Kind kind, @Nullable Object value) {
        if (value == null) {
            return "";
        }
        return switch (kind) {
            case TEXT, KEY -> Visible.text(text(value), screen);
            case COUNT -> Digits.grouped(((Number) value).longValue());
            case MONEY -> {
                Money money = (Money) value;
                yield Digits.grouped(money.amount(), money.amount().scale());
            }
            case MONEY_TOTAL -> {
                Money money = (Money) value;
                yield Digits.grouped(money.amount(), Math.max(0, money.amount().scale() - 2));
            }
            case MONEY_EACH -> number(value, Math.max(0, moneyDigits - 1));
            case RATIO -> number(value, RATIO_DECIMALS);
            case INTERVAL -> interval((Estimate) value);
            case MINUTES -> number(value, 0);
            case NUMBER -> plain(value);
            case DATE ->
                value instanceof LocalDateTime time
                        ? TO_THE_MINUTE.format(time)
                        : Visible.text(value.toString(), screen);
            case YES_NO -> (Boolean) value ? "yes" : "no";
            case BAR -> Shapes.bar(((Number) value).doubleValue(), BAR_CELLS, screen);
        };
    }

    static String text(Object value) {
        if (value instanceof Coded coded) {
            return coded.code();
        }
        if (value instanceof UnitId unit) {
            return unit.value();
        }
        return value instanceof LotId lot ? lot.value() : value.toString();
    }

    private static String number(Object value, int decimals) {
        return Digits.grouped(((Number) value).doubleValue(), decimals);
    }

    private static String interval(Estimate e) {
        return Double.isNaN(e.value())
                ? ""
                : Digits.grouped(e.value(), RATIO_DECIMALS) + " (" + Digits.grouped(e.low(), RATIO_DECIMALS) + "-"
                        + Digits.grouped(e.high(), RATIO_DECIMALS) + ")";
    }

    private static String plain(Object value) {
        if (value instanceof Double d) {
            return d.isNaN() || d.isInfinite() ? "" : Digits.upTo(BigDecimal.valueOf(d), 2);
        }
        return Digits.upTo(value instanceof Quantity q ? q.number() : new BigDecimal(value.toString()), 2);
    }
}
