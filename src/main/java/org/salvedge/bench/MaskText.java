package org.salvedge.bench;

import java.util.ArrayList;
import java.util.List;

/** Contacts, trials and priors as they are typed. Every message is a predicate of the text in question. */
public final class MaskText {
    private MaskText() {}

    /**
     * Trials such as {@code 1,2,3=good;1,2=bad}; nothing before the equals sign = nothing was masked.
     *
     * @throws IllegalArgumentException saying what is wrong with which of them
     */
    public static List<MaskTrial> trials(String text, int contacts) {
        List<MaskTrial> trials = new ArrayList<>();
        for (String each : text.split(";", -1)) {
            String trial = each.strip();
            if (trial.isEmpty()) {
                continue;
            }
            int equals = trial.indexOf('=');
            String verdict = equals < 0 ? "" : trial.substring(equals + 1).strip();
            if (!verdict.equals("good") && !verdict.equals("bad")) {
                throw new IllegalArgumentException("\"" + trial
                        + "\" is not a trial; write the masked contacts and what was seen, as in 1,2,3=good");
            }
            trials.add(new MaskTrial(contacts(trial.substring(0, equals), contacts), verdict.equals("good")));
        }
        return trials;
    }

    /** Contacts such as {@code 1,2,5} or {@code 1 2 5} as a set; bit i stands for contact i + 1. */
    public static int contacts(String text, int most) {
        int set = 0;
        for (String p : text.strip().split("[ ,]+", -1)) {
            if (p.isEmpty()) {
                continue;
            }
            int i = p.matches("[0-9]{1,3}") ? Integer.parseInt(p) : 0;
            if (i < 1 || i > most) {
                throw new IllegalArgumentException(
                        "\"" + p + "\" is not a contact; they count from 1 to " + most + " along the ribbon");
            }
            set |= 1 << (i - 1);
        }
        return set;
    }

    /** {@code one}, {@code run}, one chance for all, or a chance for each contact. */
    public static double[] prior(String text, int contacts) {
        if (text.equals("one")) {
            return MaskPrior.one(contacts);
        }
        if (text.equals("run")) {
            return MaskPrior.run(contacts);
        }
        String[] words = text.split(",", -1);
        if (words.length != 1 && words.length != contacts) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" has " + words.length + " chances for " + contacts + " contacts");
        }
        double[] chances = new double[contacts];
        for (int i = 0; i < contacts; i++) {
            String word = words[words.length == 1 ? 0 : i].strip();
            if (!word.matches("[0-9]*\\.?[0-9]+")) {
                throw new IllegalArgumentException(
                        "\"" + text + "\" is no prior; write one, run, a chance, or a chance for each contact");
            }
            chances[i] = Double.parseDouble(word);
        }
        return MaskPrior.independent(chances);
    }

    /** Positions of a set, ascending. */
    public static List<Integer> positions(int set) {
        List<Integer> positions = new ArrayList<>();
        for (int i = 0; i < Integer.SIZE - 1; i++) {
            if ((set >> i & 1) == 1) {
                positions.add(i + 1);
            }
        }
        return positions;
    }
}
