package org.salvedge.ledger;

import java.math.BigDecimal;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/** The types of columns. */
final class Types {
    static final int FIRST_DAY = 0;
    static final int LAST_DAY = 65_535;
    static final long LARGEST = 999_999_999_999L;

    /** Free text, kept as it is. */
    static final Type<String> TEXT = new Type<>("string", true) {
        @Override
        String parse(String cell, Currency lot, Codec codec) {
            return Parse.text(cell);
        }

        @Override
        String ofText(String text) {
            return text;
        }
    };

    /** Text that comes again and again, kept once in the dictionary. */
    static final Type<String> WORD = new Type<>("string", false) {
        @Override
        String parse(String cell, Currency lot, Codec codec) {
            return Parse.text(cell);
        }

        @Override
        long toNumber(String value, Codec codec) throws SQLException {
            return codec.words().id(value);
        }

        @Override
        String ofNumber(long number, Currency lot, Codec codec) throws SQLException {
            return codec.words().text((int) number);
        }
    };

    static final Type<Integer> WHOLE = new Type<>("integer", false) {
        @Override
        Integer parse(String cell, Currency lot, Codec codec) {
            return Parse.whole(cell);
        }

        @Override
        long toNumber(Integer value, Codec codec) {
            return value;
        }

        @Override
        Integer ofNumber(long number, Currency lot, Codec codec) {
            return (int) number;
        }
    };

    static final Type<Boolean> YES_NO = new Type<>("boolean", false) {
        @Override
        Boolean parse(String cell, Currency lot, Codec codec) {
            return Parse.yesNo(cell);
        }

        @Override
        long toNumber(Boolean value, Codec codec) {
            return value ? 1 : 0;
        }

        @Override
        Boolean ofNumber(long number, Currency lot, Codec codec) {
            return number == 1;
        }
    };

    /** Kept as days since 1970-01-01. */
    static final Type<LocalDate> DATE = new Type<>("date", false) {
        @Override
        LocalDate parse(String cell, Currency lot, Codec codec) {
            return Parse.date(cell);
        }

        @Override
        long toNumber(LocalDate value, Codec codec) {
            return value.toEpochDay();
        }

        @Override
        LocalDate ofNumber(long number, Currency lot, Codec codec) {
            return LocalDate.ofEpochDay(number);
        }
    };

    /** Kept as seconds since 1970-01-01T00:00:00 on the shop's own clock. */
    static final Type<LocalDateTime> TIME = new Type<>("datetime", false) {
        private final DateTimeFormatter form = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss");

        @Override
        LocalDateTime parse(String cell, Currency lot, Codec codec) {
            return Parse.time(cell);
        }

        @Override
        String format(LocalDateTime value) {
            return form.format(value);
        }

        @Override
        long toNumber(LocalDateTime value, Codec codec) {
            return value.toEpochSecond(ZoneOffset.UTC);
        }

        @Override
        LocalDateTime ofNumber(long number, Currency lot, Codec codec) {
            return LocalDateTime.ofEpochSecond(number, 0, ZoneOffset.UTC);
        }
    };

    /** Minutes, hours, inches; kept as millionths. */
    static final Type<Quantity> QUANTITY = new Type<>("number", false) {
        @Override
        Quantity parse(String cell, Currency lot, Codec codec) {
            return new Quantity(Parse.decimal(cell, 6, "a number with at most 6 decimals"));
        }

        @Override
        long toNumber(Quantity value, Codec codec) {
            return value.millionths();
        }

        @Override
        Quantity ofNumber(long number, Currency lot, Codec codec) {
            return new Quantity(number);
        }
    };

    /** An amount in the book's currency, kept as minor units. */
    static final Type<Money> MONEY = money(false);

    /** An amount in the currency of its lot, kept as minor units. */
    static final Type<Money> LOT_MONEY = money(true);

    static final Type<BigDecimal> RATE = new Type<>("number", true) {
        @Override
        BigDecimal parse(String cell, Currency lot, Codec codec) {
            return Parse.rate(cell);
        }

        @Override
        String format(BigDecimal value) {
            return value.stripTrailingZeros().toPlainString();
        }

        @Override
        String toText(BigDecimal value) {
            return format(value);
        }

        @Override
        BigDecimal ofText(String text) {
            return new BigDecimal(text);
        }
    };

    static final Type<Currency> CURRENCY = new Type<>("string", true) {
        @Override
        Currency parse(String cell, Currency lot, Codec codec) {
            return Parse.currency(cell);
        }

        @Override
        Currency ofText(String text) {
            return Currency.getInstance(text);
        }
    };

    private Types() {}

    private static Type<Money> money(boolean ofLot) {
        return new Type<>("number", false) {
            @Override
            Money parse(String cell, Currency lot, Codec codec) {
                Currency currency = ofLot ? lot : codec.book();
                int digits = currency.getDefaultFractionDigits();
                String what = "an amount in " + currency + ", which has " + digits + " decimals";
                return new Money(Parse.decimal(cell, digits, what), currency);
            }

            @Override
            long toNumber(Money value, Codec codec) {
                return value.minor();
            }

            @Override
            Money ofNumber(long number, Currency lot, Codec codec) {
                return new Money(number, ofLot ? lot : codec.book());
            }
        };
    }

    /** A constant of an enum, kept as its ordinal; the enum's order must stay. */
    static <E extends Enum<E> & Coded> Type<E> oneOf(Class<E> type) {
        E[] all = type.getEnumConstants();
        return new Type<>("string", false) {
            @Override
            List<String> words() {
                return Stream.of(all).map(Coded::code).collect(Collectors.toList());
            }

            @Override
            E parse(String cell, Currency lot, Codec codec) {
                for (E e : all) {
                    if (e.code().equals(cell)) {
                        return e;
                    }
                }
                throw new BadCell("is not known here", "Write one of " + Coded.codes(type) + ".");
            }

            @Override
            String format(E value) {
                return value.code();
            }

            @Override
            long toNumber(E value, Codec codec) {
                return value.ordinal();
            }

            @Override
            E ofNumber(long number, Currency lot, Codec codec) {
                return all[(int) number];
            }
        };
    }
}
