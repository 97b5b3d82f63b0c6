package org.salvedge.cli;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.report.BenchSheetReader.Filled;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/** Cells of one row of a bench sheet as values; what cannot be is told with its column. */
final class SheetCells {
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,9}(\\.[0-9]{1,6})?");

    private final Session session;
    private final Filled row;
    private final Telling telling;

    /** Takes a problem: row, column, text found, what is wrong, what to do. */
    interface Telling {
        void problem(Filled row, @Nullable String column, @Nullable String found, String what, String advice);
    }

    SheetCells(Session session, Filled row, Telling telling) {
        this.session = session;
        this.row = row;
        this.telling = telling;
    }

    @Nullable
    Fault fault(String text) {
        return code("fault", text, session.shop().settings().codes().faults());
    }

    @Nullable
    Fix fix(String text) {
        return code("fix", text, session.shop().settings().codes().fixes());
    }

    private <C extends Coded> @Nullable C code(String column, String text, Map<C, String> codes) {
        String typed = text.toLowerCase(Locale.ROOT).replace(' ', '_');
        for (C code : codes.keySet()) {
            if (code.code().equals(typed)) {
                return code;
            }
        }
        List<C> begin =
                codes.keySet().stream().filter(c -> c.code().startsWith(typed)).toList();
        if (begin.size() == 1) {
            return begin.get(0);
        }
        telling.problem(row, column, text, "is not a code", "Choose from the list in the cell");
        return null;
    }

    @Nullable
    Quantity number(String column, @Nullable String text) {
        BigDecimal number = decimal(column, text);
        return number == null ? null : Quantity.of(number);
    }

    @Nullable
    Money money(String column, @Nullable String text) {
        BigDecimal number = decimal(column, text);
        if (number == null) {
            return null;
        }
        try {
            return Money.of(number, session.shop().settings().currency());
        } catch (ArithmeticException e) {
            telling.problem(row, column, text, "has more decimals than the currency", "Round it");
            return null;
        }
    }

    private @Nullable BigDecimal decimal(String column, @Nullable String text) {
        if (text == null) {
            return null;
        }
        if (!NUMBER.matcher(text).matches()) {
            telling.problem(row, column, text, "is not a number of 0 or more", "Write digits only, as in 41.5");
            return null;
        }
        return new BigDecimal(text);
    }

    @Nullable
    Boolean yesNo(String column, @Nullable String text) {
        if (text == null) {
            return null;
        }
        switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true" -> {
                return true;
            }
            case "no", "n", "false" -> {
                return false;
            }
            default -> {
                telling.problem(row, column, text, "is neither yes nor no", "Write yes, no, or nothing");
                return null;
            }
        }
    }

    @Nullable
    Grade grade(@Nullable String text) {
        if (text == null) {
            return null;
        }
        for (Grade g : Grade.values()) {
            if (g.name().equalsIgnoreCase(text)) {
                return g;
            }
        }
        telling.problem(row, "grade", text, "is no grade", "Write A, B or C");
        return null;
    }
}
