package org.salvedge.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Quantity;

/**
 * One line typed at the bench: {@code FAULT FIX RESULT} and what else is to be said, each by its number or first letters. Where
 * the fault of the set in hand is known, the line begins with the fix.
 *
 * @param fault null = not said
 * @param fix null = not said: the line tells the fault found, the fix comes later
 * @param passed null = no retest
 * @param diagnosis minutes, where typed
 * @param minutes of the fix, where typed
 * @param parts amount, where typed
 * @param partLabels of parts out of stock that were used
 */
public record BenchLine(
        @Nullable Fault fault,
        @Nullable Fix fix,
        @Nullable Boolean passed,
        @Nullable Grade grade,
        boolean safetyTested,
        boolean ownerDataReset,
        @Nullable Quantity diagnosis,
        @Nullable Quantity minutes,
        @Nullable BigDecimal parts,
        @Nullable Quantity soakHours,
        List<String> partLabels,
        @Nullable String note) {
    private static final Pattern MINUTES = Pattern.compile("([0-9]{1,4}(?:\\.[0-9]{1,2})?)m");
    private static final Pattern BOTH_MINUTES =
            Pattern.compile("([0-9]{1,4}(?:\\.[0-9]{1,2})?)\\+([0-9]{1,4}(?:\\.[0-9]{1,2})?)m");
    private static final Pattern PARTS = Pattern.compile("p([0-9]{1,9}(?:\\.[0-9]{1,4})?)");
    private static final Pattern SOAK = Pattern.compile("h([0-9]{1,4}(?:\\.[0-9]{1,2})?)");
    private static final String PROPOSED = ".";

    /**
     * The codes that may be typed, in the order of their numbers.
     *
     * @param proposed the fix taken for a dot; null = none
     */
    public record Codes(
            List<Fault> faults, List<Fix> fixes, @Nullable Fix proposed) {
        public Codes {
            faults = List.copyOf(faults);
            fixes = List.copyOf(fixes);
        }
    }

    /**
     * @param faultKnown the fault of the set in hand was typed before
     * @throws IllegalArgumentException saying which word is not understood and what to type
     */
    public static BenchLine parse(String text, boolean faultKnown, Codes codes) {
        int quote = text.indexOf('"');
        String note =
                quote < 0 ? null : text.substring(quote + 1).replace("\"", "").strip();
        List<String> words = words(quote < 0 ? text : text.substring(0, quote));
        Reading r = new Reading();
        int at = 0;
        if (!faultKnown || !words.isEmpty() && isFaultOnly(words.get(0), codes)) {
            if (words.isEmpty()) {
                throw new IllegalArgumentException("type the fault found");
            }
            r.fault = pick("fault", words.get(at++), codes.faults());
        }
        if (at < words.size()) {
            String word = words.get(at++);
            if (word.equals(PROPOSED)) {
                if (codes.proposed() == null) {
                    throw new IllegalArgumentException("no fix is proposed for this fault; type one");
                }
                r.fix = codes.proposed();
            } else {
                r.fix = pick("fix", word, codes.fixes());
            }
        }
        if (at < words.size()) {
            r.result(words.get(at++));
        }
        while (at < words.size()) {
            r.more(words.get(at++));
        }
        return new BenchLine(
                r.fault,
                r.fix,
                r.passed,
                r.grade,
                r.tested,
                r.reset,
                r.diagnosis,
                r.minutes,
                r.parts,
                r.soak,
                List.copyOf(r.labels),
                note == null || note.isEmpty() ? null : note);
    }

    /** With a fault known already, a word that can only be a fault tells another one. */
    private static boolean isFaultOnly(String word, Codes codes) {
        return !word.equals(PROPOSED)
                && matches(word, codes.fixes()).isEmpty()
                && !matches(word, codes.faults()).isEmpty();
    }

    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        for (String word : text.strip().split("[\\s,]+", -1)) {
            if (!word.isEmpty()) {
                words.add(word.toLowerCase(Locale.ROOT));
            }
        }
        return words;
    }

    /** The one code that a number or first letters stand for. */
    static <C extends Coded> C pick(String what, String word, List<C> codes) {
        List<C> found = matches(word, codes);
        if (found.size() == 1) {
            return found.get(0);
        }
        if (found.isEmpty()) {
            throw new IllegalArgumentException("\"" + word + "\" is no " + what + "; ? lists them");
        }
        List<String> names = new ArrayList<>();
        for (C code : found) {
            names.add(codes.indexOf(code) + 1 + " " + code.code());
        }
        throw new IllegalArgumentException(
                "\"" + word + "\" may be " + String.join(", ", names) + ": type the number or more letters");
    }

    private static <C extends Coded> List<C> matches(String word, List<C> codes) {
        if (word.matches("[0-9]{1,3}")) {
            int number = Integer.parseInt(word);
            return number >= 1 && number <= codes.size() ? List.of(codes.get(number - 1)) : List.of();
        }
        for (C code : codes) {
            if (code.code().equals(word)) {
                return List.of(code);
            }
        }
        List<C> begin = codes.stream().filter(c -> c.code().startsWith(word)).toList();
        return begin.isEmpty()
                ? codes.stream().filter(c -> initials(c.code()).equals(word)).toList()
                : begin;
    }

    private static String initials(String code) {
        StringBuilder initials = new StringBuilder();
        for (String word : code.split("_", -1)) {
            initials.append(word.isEmpty() ? "" : word.substring(0, 1));
        }
        return initials.toString();
    }

    /** What was read so far. */
    private static final class Reading {
        @Nullable
        Fault fault;

        @Nullable
        Fix fix;

        @Nullable
        Boolean passed;

        @Nullable
        Grade grade;

        boolean tested;
        boolean reset;

        @Nullable
        Quantity diagnosis;

        @Nullable
        Quantity minutes;

        @Nullable
        BigDecimal parts;

        @Nullable
        Quantity soak;

        final List<String> labels = new ArrayList<>();

        void result(String word) {
            switch (word) {
                case "y", "yes" -> passed = true;
                case "n", "no" -> passed = false;
                case "-" -> passed = null;
                default -> more(word);
            }
        }

        void more(String word) {
            var both = BOTH_MINUTES.matcher(word);
            var one = MINUTES.matcher(word);
            var cost = PARTS.matcher(word);
            var hours = SOAK.matcher(word);
            if (both.matches()) {
                diagnosis = Quantity.parse(both.group(1));
                minutes = Quantity.parse(both.group(2));
            } else if (one.matches()) {
                minutes = Quantity.parse(one.group(1));
            } else if (cost.matches()) {
                parts = new BigDecimal(cost.group(1));
            } else if (word.length() > 1 && word.startsWith("+")) {
                labels.add(word.substring(1));
            } else if (hours.matches()) {
                soak = Quantity.parse(hours.group(1));
            } else if (word.equals("a") || word.equals("b") || word.equals("c")) {
                grade = Grade.valueOf(word.toUpperCase(Locale.ROOT));
            } else if (word.equals("s") || word.equals("o") || word.equals("so") || word.equals("os")) {
                tested |= word.contains("s");
                reset |= word.contains("o");
            } else {
                throw new IllegalArgumentException("\"" + word + "\" is not understood here; ? shows what may be said");
            }
        }
    }
}
