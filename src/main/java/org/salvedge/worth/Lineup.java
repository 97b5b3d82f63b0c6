package org.salvedge.worth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.shop.History;

/** The sets of a question sorted into kinds. */
final class Lineup {
    final Kind[] kinds;
    /** Number of sets of each kind. */
    final int[] sets;
    /** Kind of each set of the question. */
    final int[] kindOf;

    final Strangers strangers;

    private final Parts parts;
    private final Map<String, Integer> strange = new LinkedHashMap<>();
    private final Map<String, Families.Guess> guesses = new HashMap<>();
    private final Map<String, Integer> mixtureOf = new HashMap<>();
    private final List<Families.Shares> mixtures = new ArrayList<>();

    Lineup(Parts parts, List<Candidate> candidates) {
        this.parts = parts;
        Map<Kind, Integer> numbers = new LinkedHashMap<>();
        List<Integer> counts = new ArrayList<>();
        kindOf = new int[candidates.size()];
        for (int i = 0; i < kindOf.length; i++) {
            Integer known = numbers.putIfAbsent(kind(candidates.get(i), i + 1), numbers.size());
            kindOf[i] = known == null ? numbers.size() - 1 : known;
            if (known == null) {
                counts.add(1);
            } else {
                counts.set(known, counts.get(known) + 1);
            }
        }
        kinds = numbers.keySet().toArray(Kind[]::new);
        sets = counts.stream().mapToInt(Integer::intValue).toArray();
        double[][] said = parts.asking.strangers(candidates, kinds, kindOf, strange.size());
        strangers = new Strangers(strange.size(), said[0], said[1], mixtures.toArray(Families.Shares[]::new));
    }

    private Kind kind(Candidate c, int number) {
        History history = parts.records.history;
        int maker = c.maker() == null ? -1 : history.makers().findAlike(c.maker());
        double size =
                c.inches() == null || !(c.inches() > 0) ? Double.NaN : Math.log(c.inches() / Records.USUAL_INCHES);
        int claim = parts.records.codes.claim(c.claimed());
        double logInches = Double.isNaN(size) ? 0 : size;
        if (c.model() == null || Families.plain(c.model()).isEmpty()) {
            String like = c.maker() + "\u0000" + c.inches();
            int mixture = mixtureOf.computeIfAbsent(like, k -> {
                mixtures.add(parts.families.likely(maker, size));
                return mixtures.size() - 1;
            });
            int stranger = stranger(like);
            return new Kind(-1, 0, stranger, mixture, number, maker, logInches, claim, "model not given");
        }
        Families.Guess guess = guesses.computeIfAbsent(
                c.maker() + "\u0000" + c.model() + "\u0000" + c.inches(),
                k -> parts.families.guess(c.model(), maker, size));
        boolean certain = guess.family() >= 0 && guess.sure() >= 1;
        int stranger = certain
                ? -1
                : stranger(c.maker() + "\u0000" + Families.beginning(c.model()) + "\u0000" + Math.round(size * 10));
        if (Double.isNaN(size) && guess.family() >= 0) {
            logInches = parts.records.familyLogInches[guess.family()];
        }
        return new Kind(guess.family(), guess.sure(), stranger, -1, 0, maker, logInches, claim, guess.why());
    }

    private int stranger(String group) {
        return strange.computeIfAbsent(group, k -> strange.size());
    }
}
