package org.salvedge.manifest.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.salvedge.shop.Claim;

/**
 * Reads a seller's remark, in any of four languages, as one claim: the worst of what it says. Broken glass goes before
 * everything, a symptom before a state; a shop's own words go before ours.
 */
public final class ClaimReader {
    /** From worst to best. */
    private static final List<Claim> ORDER = List.of(
            Claim.CRACKED,
            Claim.DEAD,
            Claim.NO_PICTURE,
            Claim.HALF_SCREEN,
            Claim.HORIZONTAL_LINES,
            Claim.VERTICAL_LINES,
            Claim.BOOT_LOOP,
            Claim.NO_SOUND,
            Claim.DIM_PATCHY,
            Claim.OTHER,
            Claim.UNTESTED,
            Claim.CUSTOMER_RETURN,
            Claim.WORKING);

    private static final int RANK_OF_OWN = 1;
    private static final int LONGEST = 600;
    private static final double DEFAULT_SURE = 0.3;

    private final SymptomWords words = new SymptomWords();
    private final Phrases<Claim> own = new Phrases<>();
    private final boolean hasOwn;
    private final Kept<Reading> kept = new Kept<>(this::readAfresh);

    /**
     * What a remark was taken for.
     *
     * @param sureness 0 to 1
     * @param matched the words that decided it; "" where none did
     * @param others what else it says, worst first
     */
    public record Reading(Claim claim, double sureness, String matched, List<Claim> others) {}

    /** @param ownWords a seller's words = claim code */
    public ClaimReader(Map<String, String> ownWords) {
        ownWords.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(entry -> own.add(Folded.fold(entry.getKey()), new Claim(entry.getValue())));
        hasOwn = !ownWords.isEmpty();
    }

    /** Reads a remark; blank text is {@code untested}, words that say nothing known are {@code other}. */
    public Reading read(String text) {
        return kept.get(text);
    }

    private record Said(Claim claim, String matched, int rank) {}

    private Reading readAfresh(String text) {
        String folded = Folded.fold(text.length() > LONGEST ? text.substring(0, LONGEST) : text);
        if (folded.isBlank()) {
            return new Reading(Claim.UNTESTED, 0, "", List.of());
        }
        List<Said> said = new ArrayList<>();
        String rest = hasOwn ? takeOwn(folded, said) : folded;
        List<Clause> clauses = words.clauses(rest);
        int unknown = 0;
        int all = 0;
        for (int i = 0; i < clauses.size(); i++) {
            Clause clause = clauses.get(i);
            if (i > 0) {
                clause.denyHarmAfter(clauses.get(i - 1));
            }
            unknown += clause.unknown();
            all += clause.items().size();
            for (Claim claim : ClaimRules.claims(clause, clauses)) {
                said.add(new Said(claim, words(clause), rank(claim)));
            }
        }
        if (said.isEmpty()) {
            return new Reading(Claim.OTHER, DEFAULT_SURE, "", List.of());
        }
        said.sort(Comparator.comparingInt(Said::rank));
        Set<Claim> others = new LinkedHashSet<>(said.stream().map(Said::claim).toList());
        others.remove(said.get(0).claim);
        double sure = 1 - 0.6 * unknown / Math.max(1, all) - (others.isEmpty() ? 0 : 0.1);
        return new Reading(said.get(0).claim, sure, said.get(0).matched, List.copyOf(others));
    }

    private static int rank(Claim claim) {
        return 2 * ORDER.indexOf(claim);
    }

    private static String words(Clause clause) {
        List<String> telling = new ArrayList<>();
        for (Clause.Item item : clause.items()) {
            if (!item.ideas().isEmpty() && !(item.ideas().size() == 1 && item.is(Idea.FILLER))) {
                telling.add(item.words());
            }
        }
        return String.join(" ", telling);
    }

    /** Takes the shop's own phrases out of the text and returns what is left. */
    private String takeOwn(String folded, List<Said> said) {
        List<String> all = Folded.words(folded);
        String rest = folded;
        for (Phrases.Found<Claim> found : own.find(all)) {
            List<String> phrase = all.subList(found.from(), found.to());
            said.add(new Said(found.meaning(), String.join(" ", phrase), RANK_OF_OWN));
            for (String word : phrase) {
                rest = rest.replaceFirst("(?<![\\p{L}\\p{N}])" + word + "(?![\\p{L}\\p{N}])", " ");
            }
        }
        return rest;
    }

    /** Whether a word is one that remarks are made of; names may be made of such words too. */
    public boolean knows(String word) {
        return words.knows(word);
    }

    /** Whether a word says something in a remark, as wifi does and TV does not. */
    public boolean means(String word) {
        return words.means(word);
    }

    /** Whether a word tells of the state of a set and is no name: cracked, untested, defekt. */
    public boolean isStateWord(String word) {
        return words.tellsState(word);
    }
}
