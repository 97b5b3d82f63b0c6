package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.DonorGain;

/** What boards out of donors are expected to save a lot, in words and as JSON. */
final class DonorReport {
    private static final int MOST_ROWS = 4;
    private static final double NOTABLE = 0.05;

    private DonorReport() {}

    /** @param amount that the words are about, book currency */
    record Said(String words, double amount) {}

    /** A paragraph each; none where nothing is expected. */
    static List<Said> words(@Nullable DonorGain d) {
        List<Said> words = new ArrayList<>();
        if (d == null) {
            return words;
        }
        if (d.pairs() >= NOTABLE) {
            List<String> rows = new ArrayList<>();
            for (DonorGain.Row row : d.rows()) {
                if (rows.size() < MOST_ROWS && row.pairs() >= NOTABLE) {
                    rows.add(String.format(
                            Locale.ROOT,
                            "%s for %s %.1f (by %s)",
                            row.kind().code(),
                            row.family(),
                            row.pairs(),
                            row.byNumber() ? "number" : "family"));
                }
            }
            String said = String.format(
                    Locale.ROOT,
                    "%.1f boards out of donors, of this lot or here, should go into its sets and save %s (give or take"
                            + " %s), which is in the figures: %s%s. The shop makes %.2f of the pairings that could be.",
                    d.pairs(),
                    Digits.grouped(d.gain(), 0),
                    Digits.grouped(d.sd(), 0),
                    String.join("; ", rows),
                    d.rows().size() > rows.size() ? "; ..." : "",
                    d.takeUp());
            words.add(new Said(said, d.gain()));
        }
        if (d.pairsHere() >= NOTABLE) {
            String said = String.format(
                    Locale.ROOT,
                    "%.1f boards of this lot should go into sets that are on the bench now and save %s there: not in the"
                            + " figures, as it is in the books of other lots.",
                    d.pairsHere(),
                    Digits.grouped(d.gainHere(), 0));
            words.add(new Said(said, d.gainHere()));
        }
        return words;
    }

    /** A map to be written by {@link JsonWriter}; null where nothing was counted. */
    static @Nullable Object json(@Nullable DonorGain d) {
        if (d == null) {
            return null;
        }
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("pairs", d.pairs());
        json.put("gain", d.gain());
        json.put("gain_sd", d.sd());
        json.put("take_up", d.takeUp());
        json.put("pairs_here", d.pairsHere());
        json.put("gain_here", d.gainHere());
        List<Object> rows = new ArrayList<>();
        for (DonorGain.Row r : d.rows()) {
            Map<String, @Nullable Object> row = new LinkedHashMap<>();
            row.put("kind", r.kind());
            row.put("family", r.family());
            row.put("by", r.byNumber() ? "number" : "family");
            row.put("pairs", r.pairs());
            row.put("gain", r.gain());
            rows.add(row);
        }
        json.put("rows", rows);
        return json;
    }
}
