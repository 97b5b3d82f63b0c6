package org.salvedge.cli;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.salvedge.bench.LineWalk;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Grade;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Residual;
import org.salvedge.shop.Side;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Texts of the command line become values, or say what is wrong with them: predicate of a sentence, then what to write.
 *
 * <p>The only class that implements an interface of picocli's, and all types in one: a class archive cannot hold an interface of
 * such old byte code once one of our archived classes implements it, so the launcher leaves this one out.
 */
final class TextConverter implements ITypeConverter<Object> {
    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,15}(\\.[0-9]{1,12})?");
    private static final int SIX = 6;
    private static final List<Class<?>> TYPES = List.of(
            Boolean.class,
            LocalDate.class,
            LocalDateTime.class,
            BigDecimal.class,
            Amount.class,
            Quantity.class,
            Format.class,
            Grade.class,
            Residual.class,
            Basis.class,
            Side.class,
            PartKind.class,
            PartTest.class,
            LineWalk.Direction.class,
            LineWalk.Extent.class,
            LineWalk.HalfDriven.class,
            LineWalk.UnderPressure.class);

    private final Class<?> type;

    private TextConverter(Class<?> type) {
        this.type = type;
    }

    @SuppressWarnings("unchecked") // each converts to its own type
    static void register(CommandLine line) {
        for (Class<?> type : TYPES) {
            line.registerConverter((Class<Object>) type, new TextConverter(type));
        }
    }

    @Override
    public Object convert(String text) {
        if (type == Boolean.class) {
            return yesNo(text);
        } else if (type == LocalDate.class) {
            return date(text);
        } else if (type == LocalDateTime.class) {
            return time(text);
        } else if (type == BigDecimal.class) {
            return decimal(text);
        } else if (type == Amount.class) {
            return new Amount(notNegative(text));
        } else if (type == Quantity.class) {
            return quantity(text);
        }
        return coded(text);
    }

    /** For options that say yes or no; an option that is only there or not is a primitive. */
    private static boolean yesNo(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true" -> true;
            case "no", "n", "false" -> false;
            default -> throw bad("is neither yes nor no");
        };
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw bad("is not a date; write it as in 2026-03-14");
        }
    }

    private static LocalDateTime time(String text) {
        try {
            return LocalDateTime.parse(text.strip().replace(' ', 'T')).withNano(0);
        } catch (DateTimeException e) {
            throw bad("is not a date and time; write them as in 2026-03-14T09:05");
        }
    }

    private static BigDecimal decimal(String text) {
        if (!DECIMAL.matcher(text).matches()) {
            throw bad("is not a number; write digits with a decimal point and no separators, as in 1250.50");
        }
        return new BigDecimal(text);
    }

    private static BigDecimal notNegative(String text) {
        BigDecimal number = decimal(text);
        if (number.signum() < 0) {
            throw bad("must not be negative");
        }
        return number;
    }

    private static Quantity quantity(String text) {
        BigDecimal number = notNegative(text);
        if (number.stripTrailingZeros().scale() > SIX) {
            throw bad("has more than " + SIX + " decimals");
        }
        return Quantity.of(number);
    }

    /** A code, or a beginning that only one has; case does not count. */
    private Object coded(String text) {
        String wanted = text.toLowerCase(Locale.ROOT);
        List<Object> begin = new ArrayList<>();
        List<String> codes = new ArrayList<>();
        for (Object each : type.getEnumConstants()) {
            String code = ((Coded) each).code();
            codes.add(code);
            if (code.toLowerCase(Locale.ROOT).equals(wanted)) {
                return each;
            }
            if (!wanted.isEmpty() && code.toLowerCase(Locale.ROOT).startsWith(wanted)) {
                begin.add(each);
            }
        }
        if (begin.size() == 1) {
            return begin.get(0);
        }
        throw bad("is none of " + String.join(", ", codes));
    }

    private static TypeConversionException bad(String predicate) {
        return new TypeConversionException(predicate);
    }
}
