package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;

/**
 * The character that parts the fields of a text, told by how evenly it cuts the records.
 *
 * @param usualFields how many fields most records have
 */
record Delimiter(char character, int usualFields) {
    private static final char[] CANDIDATES = {'\t', ';', ',', '|'};
    private static final int RECORDS = 300;

    /** Stands for "none": no text holds it. */
    private static final char NONE = '\uFFFF';

    static Delimiter guess(String sample) throws IOException {
        Delimiter best = new Delimiter(NONE, 1);
        double bestScore = 0;
        for (char candidate : CANDIDATES) {
            if (sample.indexOf(candidate) >= 0) {
                Map<Integer, Integer> counts = counts(sample, candidate);
                int total = counts.values().stream().mapToInt(Integer::intValue).sum();
                for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
                    int fields = entry.getKey();
                    double score = fields < 2 ? 0 : Math.log(fields) * entry.getValue() / total;
                    if (score > bestScore) {
                        bestScore = score;
                        best = new Delimiter(candidate, fields);
                    }
                }
            }
        }
        return best;
    }

    /** The same character with the usual number of fields counted in a sample. */
    static Delimiter given(char character, String sample) throws IOException {
        int usual = counts(sample, character).entrySet().stream()
                .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .orElse(1);
        return new Delimiter(character, usual);
    }

    private static Map<Integer, Integer> counts(String sample, char delimiter) throws IOException {
        Map<Integer, Integer> counts = new HashMap<>();
        Records records = new Records(new TextWindow(new StringReader(sample)), delimiter, Integer.MAX_VALUE);
        for (int i = 0; i < RECORDS && records.next(); i++) {
            if (!records.fields().stream().allMatch(String::isBlank)) {
                counts.merge(records.fields().size(), 1, Integer::sum);
            }
        }
        return counts;
    }
}
