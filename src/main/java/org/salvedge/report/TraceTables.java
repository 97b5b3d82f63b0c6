package org.salvedge.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Text;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.TraceAttempt;
import org.salvedge.yield.TraceSet;

/** The sets and attempts behind the figures, sorted so that those of one figure stand together, and links to them. */
final class TraceTables {
    static final String SETS = "Sets";
    static final String BY_SUPPLIER = "Sets by supplier";
    static final String ATTEMPTS = "Attempts";

    /** More sets than these are listed in one order only. */
    private static final int FEW = 5_000;

    private final List<TraceSet> sets;
    private final List<TraceSet> bySupplier;
    private final List<TraceAttempt> attempts;

    TraceTables(MonthReview review) {
        sets = review.why().sets();
        bySupplier = new ArrayList<>(sets.size() <= FEW ? sets : List.of());
        bySupplier.sort(Comparator.comparing(TraceSet::supplier, Text.CODE_POINTS)
                .thenComparing(TraceSet::lot, Text.CODE_POINTS)
                .thenComparing(TraceSet::unit, Text.CODE_POINTS));
        attempts = review.why().attempts();
    }

    /** To the sets of a family and fault; null where there are none. */
    @Nullable
    Linked ofCell(String family, String fault) {
        return link(SETS, sets, s -> s.family().equals(family) && s.fault().equals(fault));
    }

    @Nullable
    Linked ofSupplier(String supplier) {
        return link(BY_SUPPLIER, bySupplier, s -> s.supplier().equals(supplier));
    }

    /**
     * To the attempts with a fix on a fault.
     *
     * @param family "" = of all families
     */
    @Nullable
    Linked ofFix(String fault, String fix, String family) {
        return link(
                ATTEMPTS,
                attempts,
                a -> a.fault().equals(fault)
                        && a.fix().equals(fix)
                        && (family.isEmpty() || a.family().equals(family)));
    }

    private static <T> @Nullable Linked link(String sheet, List<T> rows, Predicate<T> which) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < rows.size(); i++) {
            if (which.test(rows.get(i))) {
                first = first < 0 ? i : first;
                last = i;
            } else if (first >= 0) {
                break;
            }
        }
        return first < 0
                ? null
                : new Linked(
                        rows(SheetWriter.FIRST_ROW + first + 1, SheetWriter.FIRST_ROW + last + 1), sheet, first, last);
    }

    private static String rows(int first, int last) {
        return first == last ? "row " + first : "rows " + first + " to " + last;
    }

    Table sets() {
        return sets("Sets behind the figures, by family and fault", sets);
    }

    Table setsBySupplier() {
        return sets("Sets behind the figures, by supplier and lot", bySupplier);
    }

    private static Table sets(String title, List<TraceSet> rows) {
        Table.Builder table = WhyTables.of(
                        Figure.UNIT,
                        Figure.SUPPLIER,
                        Figure.LOT,
                        Figure.FAMILY,
                        Figure.FAULT,
                        Figure.FIX,
                        Figure.DECIDED_IN,
                        Figure.WAS_SAVED,
                        Figure.GONE_IN,
                        Figure.SET_MARGIN)
                .title(title);
        for (TraceSet s : rows) {
            table.row(
                    s.unit(),
                    s.supplier(),
                    s.lot(),
                    s.family(),
                    s.fault(),
                    s.fix(),
                    s.decided() == null ? null : s.decided().toString(),
                    s.decided() == null ? null : s.saved(),
                    s.gone() == null ? null : s.gone().toString(),
                    s.margin());
        }
        return table.build();
    }

    Table attempts() {
        Table.Builder table = WhyTables.of(
                        Figure.FAULT,
                        Figure.FIX,
                        Figure.FAMILY,
                        Figure.UNIT,
                        Figure.NUMBER,
                        Figure.ON,
                        Figure.RESULT_OF,
                        Figure.ATTEMPT_MINUTES,
                        Figure.ATTEMPT_PARTS)
                .title("Attempts behind the fixes' figures");
        for (TraceAttempt a : attempts) {
            table.row(
                    a.fault(),
                    a.fix(),
                    a.family(),
                    a.unit(),
                    a.number(),
                    a.on(),
                    a.passed() ? "passed" : "failed",
                    a.minutes() > 0 ? a.minutes() : null,
                    a.parts());
        }
        return table.build();
    }
}
