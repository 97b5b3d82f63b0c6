package org.salvedge.ledger;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Currency;

/** Strict reading of cells of the history package; what is not exactly the value is a {@link BadCell}. */
final class Parse {
    private static final int DATE_LENGTH = 10;
    private static final int LONGEST_RATE = 30;

    private Parse() {}

    /** @throws BadCell if it holds control characters other than line breaks and tabs, or broken UTF-16 */
    static String text(String cell) {
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            if (c < ' ' && c != '\n' && c != '\r' && c != '\t' || c >= 0x7f && c <= 0x9f) {
                throw new BadCell("holds a control character", "Remove it.");
            }
            if (Character.isSurrogate(c)) {
                boolean pair = Character.isHighSurrogate(c)
                        && i + 1 < cell.length()
                        && Character.isLowSurrogate(cell.charAt(i + 1));
                if (!pair) {
                    throw new BadCell("holds half a character", "Write it again.");
                }
                i++;
            }
        }
        return cell;
    }

    static int whole(String cell) {
        long value = decimal(cell, 0, "a whole number");
        if (value > Integer.MAX_VALUE || value < Integer.MIN_VALUE) {
            throw new BadCell("is too large", "Write a number up to " + Integer.MAX_VALUE + ".");
        }
        return (int) value;
    }

    /** The words a Table Schema takes for true and false. */
    static boolean yesNo(String cell) {
        return switch (cell) {
            case "true", "TRUE", "True", "1" -> true;
            case "false", "FALSE", "False", "0" -> false;
            default -> throw new BadCell("is neither true nor false", "Write true or false, or leave it empty.");
        };
    }

    /** A decimal number as whole units of its last digit: "12.5" with 2 digits is 1250. */
    static long decimal(String cell, int digits, String what) {
        int i = 0;
        int n = cell.length();
        boolean negative = n > 0 && cell.charAt(0) == '-';
        if (negative) {
            i++;
        }
        long value = 0;
        int seen = 0;
        int decimals = -1;
        boolean surplus = false;
        for (; i < n; i++) {
            char c = cell.charAt(i);
            if (c == '.' && decimals < 0 && seen > 0) {
                decimals = 0;
            } else if (c >= '0' && c <= '9') {
                seen++;
                if (decimals < digits) {
                    value = value * 10 + (c - '0');
                    if (value > Types.LARGEST) {
                        throw new BadCell("is too large", "Check the number.");
                    }
                    decimals = decimals < 0 ? decimals : decimals + 1;
                } else {
                    surplus |= c != '0';
                }
            } else {
                throw new BadCell("is not " + what, "Write digits with a decimal point, as in 12.5.");
            }
        }
        if (seen == 0 || cell.charAt(n - 1) == '.') {
            throw new BadCell("is not " + what, "Write digits with a decimal point, as in 12.5.");
        }
        if (surplus) {
            throw new BadCell("has too many decimals", "Write " + what + ".");
        }
        for (int d = Math.max(0, decimals); d < digits; d++) {
            value *= 10;
        }
        if (value > Types.LARGEST) {
            throw new BadCell("is too large", "Check the number.");
        }
        return negative ? -value : value;
    }

    static BigDecimal rate(String cell) {
        boolean digits = cell.length() <= LONGEST_RATE;
        int points = 0;
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            points += c == '.' ? 1 : 0;
            digits &= c >= '0' && c <= '9' || c == '.' && i > 0 && i < cell.length() - 1;
        }
        if (!digits || points > 1) {
            throw new BadCell("is not a rate of exchange", "Write digits with a decimal point, as in 0.9215.");
        }
        return new BigDecimal(cell);
    }

    static Currency currency(String cell) {
        try {
            Currency currency = Currency.getInstance(cell);
            if (currency.getDefaultFractionDigits() >= 0) {
                return currency;
            }
        } catch (IllegalArgumentException e) {
            // told below
        }
        throw new BadCell("is not a currency", "Write its three letters by ISO 4217, as in EUR.");
    }

    static LocalDate date(String cell) {
        if (cell.length() != DATE_LENGTH) {
            throw notADate();
        }
        return day(cell);
    }

    private static BadCell notADate() {
        return new BadCell("is not a date", "Write year, month and day, as in 2026-03-14.");
    }

    private static LocalDate day(String cell) {
        if (cell.charAt(4) != '-' || cell.charAt(7) != '-') {
            throw notADate();
        }
        int year = digits(cell, 0, 4);
        int month = digits(cell, 5, 7);
        int day = digits(cell, 8, 10);
        if (year < 0 || month < 0 || day < 0) {
            throw notADate();
        }
        try {
            LocalDate date = LocalDate.of(year, month, day);
            if (date.toEpochDay() < Types.FIRST_DAY || date.toEpochDay() > Types.LAST_DAY) {
                throw new BadCell(
                        "is not a date that can be kept",
                        "Write one from " + LocalDate.ofEpochDay(Types.FIRST_DAY) + " to "
                                + LocalDate.ofEpochDay(Types.LAST_DAY) + ".");
            }
            return date;
        } catch (DateTimeException e) {
            throw notADate();
        }
    }

    static LocalDateTime time(String cell) {
        boolean seconds = cell.length() == 19 && cell.charAt(16) == ':';
        if (!seconds && cell.length() != 16 || cell.charAt(10) != 'T' || cell.charAt(13) != ':') {
            throw notATime();
        }
        int hour = digits(cell, 11, 13);
        int minute = digits(cell, 14, 16);
        int second = seconds ? digits(cell, 17, 19) : 0;
        if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) {
            throw notATime();
        }
        return day(cell).atTime(hour, minute, second);
    }

    private static BadCell notATime() {
        return new BadCell("is not a date and time", "Write them as in 2026-03-14T09:05:00.");
    }

    /** The number that stands between two places, or -1. */
    private static int digits(String cell, int from, int to) {
        int value = 0;
        for (int i = from; i < to; i++) {
            int d = cell.charAt(i) - '0';
            if (d < 0 || d > 9) {
                return -1;
            }
            value = value * 10 + d;
        }
        return value;
    }
}
