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
    /** Number of unknown families. */
    final int strangers;

    Lineup(Parts parts, List<Candidate> candidates) {
        History history = parts.records.history;
        Map<String, Integer> strange = new HashMap<>();
        Map<String, Families.Guess> guesses = new HashMap<>();
        Map<Kind, Integer> numbers = new LinkedHashMap<>();
        List<Integer> counts = new ArrayList<>();
        kindOf = new int[candidates.size()];
        for (int i = 0; i < kindOf.length; i++) {
            Candidate c = candidates.get(i);
            int maker = c.maker() == null ? -1 : history.makers().find(c.maker());
            double size =
                    c.inches() == null || !(c.inches() > 0) ? Double.NaN : Math.log(c.inches() / Records.USUAL_INCHES);
            Families.Guess guess = guesses.computeIfAbsent(
                    c.maker() + "\u0000" + c.model() + "\u0000" + c.inches(),
                    k -> parts.families.guess(c.model(), maker, size));
            int stranger = -1;
            if (guess.sure() < 1 || guess.family() < 0) {
                String group = c.maker() + "\u0000" + Families.beginning(c.model()) + "\u0000" + Math.round(size * 10);
                stranger = strange.computeIfAbsent(group, k -> strange.size());
            }
            double logInches = !Double.isNaN(size)
                    ? size
                    : guess.family() >= 0 ? parts.records.familyLogInches[guess.family()] : 0;
            Kind kind = new Kind(
                    guess.family(),
                    guess.sure(),
                    stranger,
                    maker,
                    logInches,
                    parts.records.codes.claim(c.claimed()),
                    guess.why());
            Integer known = numbers.putIfAbsent(kind, numbers.size());
            kindOf[i] = known == null ? numbers.size() - 1 : known;
            if (known == null) {
                counts.add(1);
            } else {
                counts.set(known, counts.get(known) + 1);
            }
        }
        kinds = numbers.keySet().toArray(Kind[]::new);
        sets = counts.stream().mapToInt(Integer::intValue).toArray();
        strangers = strange.size();
    }
}
