package org.salvedge.cli;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
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

/** Texts of the command line become values, or say what is wrong with them: predicate of a sentence, then what to write. */
final class Converters {
    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,15}(\\.[0-9]{1,12})?");
    private static final int SIX = 6;

    private Converters() {}

    static void register(CommandLine line) {
        line.registerConverter(LocalDate.class, Converters::date);
        line.registerConverter(LocalDateTime.class, Converters::time);
        line.registerConverter(Amount.class, text -> new Amount(notNegative(text)));
        line.registerConverter(Quantity.class, Converters::quantity);
        line.registerConverter(BigDecimal.class, Converters::decimal);
        line.registerConverter(Format.class, text -> coded(Format.class, text));
        line.registerConverter(Grade.class, text -> coded(Grade.class, text));
        line.registerConverter(Residual.class, text -> coded(Residual.class, text));
        line.registerConverter(Basis.class, text -> coded(Basis.class, text));
        line.registerConverter(Side.class, text -> coded(Side.class, text));
        line.registerConverter(PartKind.class, text -> coded(PartKind.class, text));
        line.registerConverter(PartTest.class, text -> coded(PartTest.class, text));
    }

    static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw bad("is not a date; write it as in 2026-03-14");
        }
    }

    static LocalDateTime time(String text) {
        try {
            return LocalDateTime.parse(text.strip().replace(' ', 'T')).withNano(0);
        } catch (DateTimeException e) {
            throw bad("is not a date and time; write them as in 2026-03-14T09:05");
        }
    }

    static BigDecimal decimal(String text) {
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
    private static <E extends Enum<E> & Coded> E coded(Class<E> type, String text) {
        String wanted = text.toLowerCase(Locale.ROOT);
        List<E> all = Arrays.asList(type.getEnumConstants());
        for (E each : all) {
            if (each.code().toLowerCase(Locale.ROOT).equals(wanted)) {
                return each;
            }
        }
        List<E> begin = all.stream()
                .filter(e ->
                        !wanted.isEmpty() && e.code().toLowerCase(Locale.ROOT).startsWith(wanted))
                .toList();
        if (begin.size() == 1) {
            return begin.get(0);
        }
        throw bad("is none of " + Coded.codes(type));
    }

    private static TypeConversionException bad(String predicate) {
        return new TypeConversionException(predicate);
    }

    /** For options that say yes or no; an option that is only there or not needs none. */
    static final class YesNo implements ITypeConverter<Boolean> {
        @Override
        public Boolean convert(String text) {
            return switch (text.toLowerCase(Locale.ROOT)) {
                case "yes", "y", "true" -> true;
                case "no", "n", "false" -> false;
                default -> throw bad("is neither yes nor no");
            };
        }
    }
}
