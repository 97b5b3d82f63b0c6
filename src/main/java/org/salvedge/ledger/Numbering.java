package org.salvedge.ledger;

import java.util.Arrays;
import org.salvedge.shop.Names;

/** Turns the ledger's numbers of words into those of a dictionary of its own, which holds only words that were met. */
final class Numbering {
    private static final int NOT_MET = -2;

    private final String[] words;
    private final int[] numbers;
    private final Names names;

    Numbering(String[] words, Names names) {
        this.words = words;
        this.numbers = new int[words.length];
        this.names = names;
        Arrays.fill(numbers, NOT_MET);
    }

    /** @param word -1 for none, which stays -1 */
    int of(int word) {
        if (word < 0) {
            return -1;
        }
        if (word >= numbers.length) {
            throw new LedgerFailure(
                    "the ledger is damaged: it speaks of word " + word + ", which is not there; run audit", null);
        }
        int known = numbers[word];
        if (known == NOT_MET) {
            known = names.number(words[word]);
            numbers[word] = known;
        }
        return known;
    }
}
