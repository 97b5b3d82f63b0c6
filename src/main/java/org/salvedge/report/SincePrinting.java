package org.salvedge.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Recorded;
import org.salvedge.shop.UnitId;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;

/**
 * What was recorded since a month's review was last printed, and which figures of its front page moved by it.
 *
 * @param printed when, by the shop's clock
 */
public record SincePrinting(LocalDateTime printed, List<Recorded> recorded, List<Moved> moved) {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");
    private static final int MOST_MOVED = 4;
    private static final int MOST_SETS = 12;
    private static final int DIGITS = 6;

    /** A figure then and now; null where it was not defined. */
    public record Moved(
            String figure,
            @Nullable BigDecimal then,
            @Nullable BigDecimal now) {
        public @Nullable BigDecimal by() {
            return then == null || now == null ? null : now.subtract(then);
        }
    }

    public SincePrinting {
        recorded = List.copyOf(recorded);
        moved = List.copyOf(moved);
    }

    /** @param then the figures that were printed; those of now that are not among them had been undefined */
    public static SincePrinting of(
            LocalDateTime printed, List<Recorded> recorded, Map<String, BigDecimal> then, Map<String, BigDecimal> now) {
        Set<String> names = new LinkedHashSet<>(now.keySet());
        names.addAll(then.keySet());
        List<Moved> moved = new ArrayList<>();
        for (String name : names) {
            BigDecimal was = then.get(name);
            BigDecimal is = now.get(name);
            if (was == null || is == null || was.compareTo(is) != 0) {
                moved.add(new Moved(name, was, is));
            }
        }
        return new SincePrinting(printed, recorded, moved);
    }

    /** The figures of the front page by their names, and the rate that they rest on; what is undefined is left out. */
    public static Map<String, BigDecimal> figures(MonthReview review, BigDecimal labourRate) {
        MonthFigures m = review.now();
        Map<String, BigDecimal> figures = new LinkedHashMap<>();
        figures.put("sets received", BigDecimal.valueOf(m.received()));
        figures.put("sets decided", BigDecimal.valueOf(m.counted().decided()));
        figures.put("sets saved", BigDecimal.valueOf(m.counted().saved()));
        put(figures, "yield in percent", 100 * m.counted().raw());
        put(figures, "minutes per saved set", m.counted().minutesPerSaved());
        figures.put("sets gone", BigDecimal.valueOf(m.counted().gone()));
        figures.put("margin", m.counted().marginTotal().amount());
        put(figures, "margin per set", m.counted().marginPerSet());
        put(figures, "margin per bench hour", m.counted().marginPerHour());
        figures.put("cost of comebacks", m.comebackCost().amount());
        figures.put("rate of an hour", labourRate);
        return figures;
    }

    private static void put(Map<String, BigDecimal> figures, String name, double value) {
        if (Double.isFinite(value)) {
            figures.put(name, BigDecimal.valueOf(value).setScale(DIGITS, RoundingMode.HALF_EVEN));
        }
    }

    /** In words. */
    public String sentence() {
        String when = "Since this month was last printed, on " + MINUTE.format(printed) + ", ";
        String what = recorded.isEmpty() ? "nothing was recorded that it counts" : entries();
        if (moved.isEmpty()) {
            return when + what + "; the figures are as they were.";
        }
        List<String> moves =
                moved.stream().limit(MOST_MOVED).map(SincePrinting::move).toList();
        int more = moved.size() - moves.size();
        return when + what + ": " + String.join(", ", moves)
                + (more > 0 ? ", and " + Plural.of(more, "figure") + " more" : "") + ".";
    }

    private String entries() {
        List<String> parts = new ArrayList<>();
        for (Recorded kind : recorded) {
            add(parts, kind.recorded(), kind, "");
            add(parts, kind.corrected(), kind, " corrected");
            add(parts, kind.takenBack(), kind, " taken back");
        }
        Set<UnitId> sets = new LinkedHashSet<>();
        recorded.forEach(kind -> sets.addAll(kind.sets()));
        return String.join(", ", parts) + (sets.isEmpty() ? "" : " (" + Plural.of(sets.size(), "set") + " concerned)");
    }

    private static void add(List<String> parts, int count, Recorded kind, String how) {
        if (count > 0) {
            parts.add(Plural.of(count, word(kind)) + (how.isEmpty() ? " recorded" : how));
        }
    }

    /** What the trade calls a row of that table. */
    static String word(Recorded kind) {
        return kind.kind().equals("unit") ? "set" : kind.kind();
    }

    private static String move(Moved moved) {
        int digits = whole(moved.then) && whole(moved.now) ? 0 : 2;
        return moved.figure + " " + text(moved.then, digits) + " to " + text(moved.now, digits);
    }

    private static boolean whole(@Nullable BigDecimal value) {
        return value == null || value.stripTrailingZeros().scale() <= 0;
    }

    private static String text(@Nullable BigDecimal value, int digits) {
        return value == null ? "undefined" : Digits.grouped(value, digits);
    }

    Table entriesTable() {
        Table.Builder table = Table.of(
                        Figure.ENTRY_KIND.column(),
                        Figure.ENTRIES_NEW.column(),
                        Figure.ENTRIES_CORRECTED.column(),
                        Figure.ENTRIES_TAKEN_BACK.column(),
                        Figure.ENTRIES_SETS.column(),
                        Figure.ENTRIES_WHICH.column())
                .title("Recorded since the last printing");
        for (Recorded kind : recorded) {
            List<UnitId> sets = kind.sets();
            String which = String.join(
                    " ", sets.stream().limit(MOST_SETS).map(UnitId::value).toList());
            table.row(
                    word(kind),
                    kind.recorded(),
                    kind.corrected(),
                    kind.takenBack(),
                    sets.size(),
                    sets.size() > MOST_SETS ? which + " and " + (sets.size() - MOST_SETS) + " more" : which);
        }
        return table.build();
    }

    Table movedTable() {
        Table.Builder table = Table.of(
                        Figure.MOVED.column(),
                        Figure.MOVED_FROM.column(),
                        Figure.MOVED_TO.column(),
                        Figure.MOVED_BY.column())
                .title("Figures of the first page that moved since the last printing");
        moved.forEach(m -> table.row(m.figure(), m.then(), m.now(), m.by()));
        return table.build();
    }
}
