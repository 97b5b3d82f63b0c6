package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.Interval;
import org.salvedge.worth.HeldLot;
import org.salvedge.worth.HindsightVerdict;

/** How the estimates of past lots held, as a table and as JSON. */
public final class HindsightReport {
    private static final int MOST_UNFINISHED = 6;

    private HindsightReport() {}

    /** The finished lots, with the verdict below. */
    public static Table table(List<HeldLot> lots, HindsightVerdict verdict) {
        Table.Builder table = judged(lots);
        if (verdict.lots() > 0) {
            table.note("");
            table.note(
                    coverage("50 %", verdict.inside50(), verdict) + "; " + coverage("80 %", verdict.inside80(), verdict)
                            + "; " + coverage("90 %", verdict.inside90(), verdict) + ".");
        }
        for (String words : verdict.words()) {
            Paragraph.lines("", words, Screen.WIDEST).forEach(table::note);
        }
        List<HeldLot> open = lots.stream().filter(l -> l.judged() == null).toList();
        if (!open.isEmpty()) {
            StringBuilder words = new StringBuilder("Not finished (share of sets gone): ");
            int shown = Math.min(MOST_UNFINISHED, open.size());
            for (int i = open.size() - shown; i < open.size(); i++) {
                words.append(i == open.size() - shown ? "" : ", ")
                        .append(open.get(i).lot())
                        .append(String.format(Locale.ROOT, " %.2f", open.get(i).done()));
            }
            words.append(open.size() > shown ? ", and " + (open.size() - shown) + " before." : ".");
            Paragraph.lines("", words.toString(), Screen.WIDEST).forEach(table::note);
        }
        return table.build();
    }

    /** Only the rows, for workbooks and CSV. */
    static Table.Builder judged(List<HeldLot> lots) {
        Table.Builder table = Table.of(
                Column.of("lot", "lot", Kind.KEY),
                Column.of("supplier", "supplier", Kind.TEXT),
                Column.of("bought_on", "bought", Kind.DATE).asDroppable(2),
                Column.of("sets", "sets", Kind.COUNT),
                Column.data("extras", Kind.COUNT),
                Column.of("lots_before", "lots\nbefore", Kind.COUNT).asDroppable(3),
                Column.of("mean", "it should\nbring", Kind.MINUTES),
                Column.data("p05", "90 %\nfrom", Kind.NUMBER),
                Column.of("p10", "80 %\nfrom", Kind.MINUTES),
                Column.data("p25", "50 %\nfrom", Kind.NUMBER),
                Column.data("p50", "middle", Kind.NUMBER),
                Column.data("p75", "50 %\nto", Kind.NUMBER),
                Column.of("p90", "80 %\nto", Kind.MINUTES),
                Column.data("p95", "90 %\nto", Kind.NUMBER),
                Column.of("outcome", "it\nbrought", Kind.MONEY_TOTAL),
                Column.of("pit", "place\nin range", Kind.RATIO),
                Column.of("plain_average", "plain\naverage", Kind.MINUTES).asDroppable(1),
                Column.data("crps", "score\n(CRPS)", Kind.NUMBER),
                Column.data("crps_plain_average", "score,\nplain\naverage", Kind.NUMBER),
                Column.data("limit", Kind.MONEY),
                Column.data("hammer", Kind.MONEY));
        for (HeldLot lot : lots) {
            HeldLot.Judged j = lot.judged();
            if (j != null) {
                table.row(
                        lot.lot(),
                        lot.supplier(),
                        lot.bought(),
                        lot.listed(),
                        lot.extras(),
                        j.lotsBefore(),
                        j.mean(),
                        j.p05(),
                        j.p10(),
                        j.p25(),
                        j.p50(),
                        j.p75(),
                        j.p90(),
                        j.p95(),
                        j.outcome(),
                        j.pit(),
                        j.plainMean(),
                        j.crps(),
                        j.plainCrps(),
                        j.limit(),
                        j.hammer());
            }
        }
        return table;
    }

    private static String coverage(String level, int inside, HindsightVerdict verdict) {
        Interval range = verdict.range(inside);
        return level + " range held " + String.format(Locale.ROOT, "%.2f", (double) inside / verdict.lots())
                + (range == null ? "" : String.format(Locale.ROOT, " (%.2f-%.2f)", range.low(), range.high()));
    }

    /** A map to be written by {@link JsonWriter}. */
    public static Map<String, @Nullable Object> json(List<HeldLot> lots, HindsightVerdict v) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("lots", v.lots());
        Map<String, @Nullable Object> coverage = new LinkedHashMap<>();
        coverage.put("50", share(v.inside50(), v));
        coverage.put("80", share(v.inside80(), v));
        coverage.put("90", share(v.inside90(), v));
        json.put("coverage", coverage);
        json.put("mean_pit", v.meanPit());
        json.put("bias", v.bias());
        json.put("crps", v.crps());
        json.put("crps_plain_average", v.plainCrps());
        json.put("skill", v.skill());
        List<Object> margins = new ArrayList<>();
        for (HindsightVerdict.Margin m : v.byLimit()) {
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("group", m.words());
            one.put("lots", m.lots());
            one.put("limit_over_hammer", m.ratio());
            one.put("bias", m.bias());
            margins.add(one);
        }
        json.put("by_limit", margins);
        json.put("verdict", v.words());
        json.put("rows", judged(lots).build());
        List<Object> open = new ArrayList<>();
        for (HeldLot lot : lots) {
            if (lot.judged() == null) {
                Map<String, @Nullable Object> one = new LinkedHashMap<>();
                one.put("lot", lot.lot());
                one.put("supplier", lot.supplier());
                one.put("bought_on", lot.bought());
                one.put("sets", lot.listed());
                one.put("done", lot.done());
                open.add(one);
            }
        }
        json.put("unfinished", open);
        return json;
    }

    private static Map<String, @Nullable Object> share(int inside, HindsightVerdict v) {
        Interval range = v.range(inside);
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("inside", inside);
        json.put("share", v.lots() == 0 ? null : (Object) ((double) inside / v.lots()));
        json.put("low", range == null ? null : (Object) range.low());
        json.put("high", range == null ? null : (Object) range.high());
        return json;
    }
}
