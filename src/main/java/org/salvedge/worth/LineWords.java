package org.salvedge.worth;

import java.util.Locale;
import org.salvedge.shop.History;

/** Small pieces of what is said of the sets of a list. */
final class LineWords {
    private LineWords() {}

    static String sets(int n) {
        return n == 1 ? "1 set" : n + " sets";
    }

    /** {@code a 55-inch set}, {@code an 85-inch set}. */
    private static String sized(long inches) {
        boolean vowel = inches == 8 || inches == 11 || inches == 18 || inches / 10 == 8;
        return (vowel ? "an " : "a ") + inches + "-inch set";
    }

    static String any(History history, Candidate set, Kind kind) {
        String size = set.inches() == null ? "a set of any size" : sized(Math.round(set.inches()));
        return size + " of "
                + (kind.maker() < 0 ? "any maker" : history.makers().text(kind.maker()));
    }

    static String twoDigits(double share) {
        return String.format(Locale.ROOT, "%.2f", share);
    }
}
