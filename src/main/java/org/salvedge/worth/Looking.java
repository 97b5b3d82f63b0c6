package org.salvedge.worth;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.stats.LookGain;

/**
 * What it is worth to look at some sets before bidding, and which to look at first. Looking shows a set's fault; that says something
 * of the set and, by what sets of a lot share, of the others. The expected recovery after looking is taken as linear in what the
 * faults found are worth (M. Strong et al., Medical Decision Making 35 (2015) 570-583: preposterior means by regression on simulated
 * findings), its spread as normal ({@link LookGain}). Sets are added one by one, each time the one that tells most.
 *
 * @param picks what to look at, the most telling kind first
 * @param spread standard deviation of the expected recovery after looking, seen from before; book currency
 * @param mean expected recovery before looking
 */
public record Looking(List<Pick> picks, double spread, double mean) {
    /** As many sets as one would look at. */
    public static final int MOST_SETS = 40;

    private static final int FEWEST_DRAWS = 2000;
    private static final int MOST_DRAWS = 16_000;
    private static final int DRAWS_TIMES_KINDS = 600_000;

    /**
     * Sets alike, of which some should be looked at.
     *
     * @param lines where on the list they stand, as many as sets to look at
     */
    public record Pick(String model, String claimed, int sets, int of, List<String> lines) {
        public Pick {
            lines = List.copyOf(lines);
        }
    }

    public Looking {
        picks = List.copyOf(picks);
    }

    /** Expected gain of the look if the lot could be had for this outlay: it may turn a purchase into none, or the other way. */
    public double gain(double outlay) {
        return LookGain.of(mean - outlay, spread);
    }

    /** @param most sets to look at, from 1 to {@link #MOST_SETS} */
    public static Looking at(ShopModel model, Question question, int most) {
        if (most < 1 || most > MOST_SETS) {
            throw new IllegalArgumentException("look at 1 to " + MOST_SETS + " sets, not " + most);
        }
        Lineup lineup = new Lineup(model.parts(), question.sets());
        int draws = Math.max(FEWEST_DRAWS, Math.min(MOST_DRAWS, DRAWS_TIMES_KINDS / lineup.kinds.length));
        Question small = new Question(question.sets(), question.supplier(), question.on(), draws, question.seed());
        Probe probe = new Probe(
                small.draws(),
                lineup.kinds.length,
                model.parts().records.codes.faults.size());
        double[] recovery = model.probed(small, lineup, probe);
        Telling telling = new Telling(recovery, probe, lineup.sets);
        int[] chosen = telling.choose(Math.min(most, question.sets().size()));
        double mean = 0;
        for (double r : recovery) {
            mean += r / recovery.length;
        }
        return new Looking(picks(question, lineup, chosen), Math.sqrt(telling.explained()), mean);
    }

    private static List<Pick> picks(Question question, Lineup lineup, int[] chosen) {
        Map<Integer, List<Integer>> sets = new LinkedHashMap<>();
        for (int i = 0; i < lineup.kindOf.length; i++) {
            sets.computeIfAbsent(lineup.kindOf[i], k -> new ArrayList<>()).add(i);
        }
        List<Pick> picks = new ArrayList<>();
        sets.forEach((kind, members) -> {
            int n = chosen[kind];
            if (n > 0) {
                Candidate c = question.sets().get(members.get(0));
                List<String> lines = members.stream()
                        .limit(n)
                        .map(i -> line(question.sets().get(i)))
                        .toList();
                picks.add(new Pick(
                        c.model() == null ? "no model" : c.model(), c.claimed().code(), n, members.size(), lines));
            }
        });
        picks.sort((a, b) -> Integer.compare(b.sets(), a.sets()));
        return picks;
    }

    private static String line(Candidate c) {
        return c.line() == null ? "?" : String.valueOf(c.line());
    }
}
