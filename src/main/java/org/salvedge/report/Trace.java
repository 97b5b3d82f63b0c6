package org.salvedge.report;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Text;
import org.salvedge.yield.FixLine;
import org.salvedge.yield.LotLine;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.OpenSet;
import org.salvedge.yield.TraceAttempt;
import org.salvedge.yield.TraceSale;
import org.salvedge.yield.TraceSet;

/**
 * The sets, attempts and lots behind the figures, in orders in which those of one figure stand together, and the links to them. A link is
 * null where nothing stands behind a figure, or where its list is not whole.
 */
final class Trace {
    static final String SETS = "Sets";
    static final String BY_SUPPLIER = "Sets by supplier";
    static final String DECIDED = "Sets decided";
    static final String GONE = "Sets gone";
    static final String ATTEMPTS = "Attempts";
    static final String OF_MONTH = "Attempts of sets";
    static final String SALES = "Sales";
    static final String LOTS = "Lots";
    static final String LOTS_BY_SUPPLIER = "Lots by supplier";
    static final String OPEN = "Open sets";

    /** Of more sets still here than these, those longest here are listed. */
    static final int MOST_OPEN = 10_000;
    /** More sets than these are listed in one order only. */
    private static final int FEW = 5_000;

    private static final int SUPPLIER_MONTHS = 24;

    final List<TraceSet> sets;
    final List<TraceSet> bySupplier;
    final List<TraceSet> decided;
    final List<TraceSet> gone;
    final List<TraceAttempt> attempts;
    final List<TraceAttempt> ofMonth;
    final List<TraceSale> sales;
    final List<LotLine> lots;
    final List<LotLine> lotsBySupplier;
    final List<OpenSet> open;
    private final Map<List<String>, Linked> cells;
    private final Map<List<String>, Linked> fixes;
    private final Map<List<String>, Linked> fixesByFamily;
    private final Map<String, Integer> rowOfLot = new HashMap<>();
    private final boolean everySet;
    private final boolean everyAttempt;
    private final boolean everyOpen;
    private final YearMonth month;

    Trace(MonthReview review) {
        this(review, review.why().sets(), review.why().attempts());
    }

    /** @param sets and attempts of a large shop, those of the month alone */
    Trace(MonthReview review, List<TraceSet> sets, List<TraceAttempt> attempts) {
        month = review.month();
        this.sets = sets;
        YearMonth before = month.minusMonths(1);
        everySet = review.before().counted().decided() == 0
                        && review.before().counted().gone() == 0
                || sets.stream().anyMatch(s -> before.equals(s.decided()) || before.equals(s.gone()));
        List<TraceSet> few = sets.size() <= FEW ? sets : List.of();
        bySupplier = sorted(
                few,
                Comparator.comparing(TraceSet::supplier, Text.CODE_POINTS)
                        .thenComparing(TraceSet::lot, Text.CODE_POINTS)
                        .thenComparing(TraceSet::unit, Text.CODE_POINTS));
        decided = sorted(
                few.stream().filter(s -> s.decided() != null).toList(),
                Comparator.<TraceSet, YearMonth>comparing(s -> Objects.requireNonNull(s.decided()))
                        .reversed()
                        .thenComparing(TraceSet::fault, Text.CODE_POINTS)
                        .thenComparing(TraceSet::family, Text.CODE_POINTS)
                        .thenComparing(TraceSet::unit, Text.CODE_POINTS));
        gone = sorted(
                few.stream().filter(s -> s.gone() != null).toList(),
                Comparator.<TraceSet, YearMonth>comparing(s -> Objects.requireNonNull(s.gone()))
                        .reversed()
                        .thenComparing(TraceSet::family, Text.CODE_POINTS)
                        .thenComparing(TraceSet::unit, Text.CODE_POINTS));
        this.attempts = attempts;
        everyAttempt = attempts.size()
                == review.why().fixes().stream().mapToInt(FixLine::attempts).sum();
        // Asked for by each row of long tables, so that each list is gone through once.
        cells = everySet ? runs(SETS, sets, s -> List.of(s.family(), s.fault())) : Map.of();
        fixes = everyAttempt ? runs(ATTEMPTS, attempts, a -> List.of(a.fix(), a.fault())) : Map.of();
        fixesByFamily =
                everyAttempt ? runs(ATTEMPTS, attempts, a -> List.of(a.fix(), a.fault(), a.family())) : Map.of();
        ofMonth = ofMonth();
        sales = review.why().sales();
        lots = sorted(review.lots(), Comparator.comparing(LotLine::arrival).reversed());
        for (int i = 0; i < lots.size(); i++) {
            rowOfLot.put(lots.get(i).lot(), i);
        }
        lotsBySupplier = sorted(
                review.lots().size() <= FEW ? review.lots() : List.of(),
                Comparator.comparing(LotLine::supplier, Text.CODE_POINTS)
                        .thenComparing(LotLine::bought, Comparator.reverseOrder()));
        everyOpen = review.open().size() <= MOST_OPEN;
        open = sorted(
                review.open().subList(0, Math.min(MOST_OPEN, review.open().size())),
                Comparator.comparing(Trace::state).thenComparing(OpenSet::days, Comparator.reverseOrder()));
    }

    /** Keeps the order of those alike. */
    private static <T> List<T> sorted(List<T> rows, Comparator<T> order) {
        return rows.stream().sorted(order).toList();
    }

    /** Attempts with a fix on sets decided in the month, family by family. */
    private List<TraceAttempt> ofMonth() {
        Set<String> units = new HashSet<>();
        decided.stream().filter(s -> month.equals(s.decided())).forEach(s -> units.add(s.unit()));
        return sorted(
                attempts.stream().filter(a -> units.contains(a.unit())).toList(),
                Comparator.comparing(TraceAttempt::fix, Text.CODE_POINTS)
                        .thenComparing(TraceAttempt::family, Text.CODE_POINTS));
    }

    static String state(OpenSet set) {
        return set.passed() ? "passed" : set.attempts() > 0 ? "tried" : "untouched";
    }

    /** To the sets of a family and fault, decided or gone in either month. */
    @Nullable
    Linked ofCell(String family, String fault) {
        return cells.get(List.of(family, fault));
    }

    @Nullable
    Linked ofFamily(String family) {
        return link(SETS, sets, s -> s.family().equals(family));
    }

    @Nullable
    Linked ofSupplier(String supplier) {
        return everySet ? link(BY_SUPPLIER, bySupplier, s -> s.supplier().equals(supplier)) : null;
    }

    @Nullable
    Linked decidedIn(YearMonth when) {
        return link(DECIDED, decided, s -> when.equals(s.decided()));
    }

    @Nullable
    Linked decidedWith(String fault) {
        return link(
                DECIDED, decided, s -> month.equals(s.decided()) && s.fault().equals(fault));
    }

    @Nullable
    Linked goneIn(YearMonth when) {
        return link(GONE, gone, s -> when.equals(s.gone()));
    }

    @Nullable
    Linked receivedIn(YearMonth when) {
        return link(LOTS, lots, l -> YearMonth.from(l.arrival()).equals(when));
    }

    /** To all attempts with a fix. */
    @Nullable
    Linked ofFix(String fix) {
        return everyAttempt ? link(ATTEMPTS, attempts, a -> a.fix().equals(fix)) : null;
    }

    /**
     * To the attempts with a fix on a fault.
     *
     * @param family "" = of all families
     */
    @Nullable
    Linked ofFix(String fault, String fix, String family) {
        return family.isEmpty() ? fixes.get(List.of(fix, fault)) : fixesByFamily.get(List.of(fix, fault, family));
    }

    /**
     * To the attempts with a fix on sets decided in the month, where the list has every one of them.
     *
     * @param family "" = of all families
     * @param number how many there are
     */
    @Nullable
    Linked ofMonth(String family, String fix, int number) {
        Linked rows = link(
                OF_MONTH,
                ofMonth,
                a -> a.fix().equals(fix) && (family.isEmpty() || a.family().equals(family)));
        return rows == null || rows.last() - rows.first() + 1 != number ? null : rows;
    }

    /** To the sales after a latest fix; "" = to all of them. */
    @Nullable
    Linked soldAfter(String fix) {
        return link(SALES, sales, s -> fix.isEmpty() || s.fix().equals(fix));
    }

    @Nullable
    Linked ofLot(String lot) {
        Integer row = rowOfLot.get(lot);
        return row == null ? null : new Linked(rows(row, row), LOTS, row, row);
    }

    /** To a supplier's lots of the 24 months. */
    @Nullable
    Linked lotsOf(String supplier) {
        LocalDate from = month.minusMonths(SUPPLIER_MONTHS - 1L).atDay(1);
        return link(
                LOTS_BY_SUPPLIER,
                lotsBySupplier,
                l -> l.supplier().equals(supplier) && !l.bought().isBefore(from));
    }

    /** To the sets here of a state, from so many days to so many. */
    @Nullable
    Linked here(String state, int fromDays, int toDays) {
        return everyOpen
                ? link(OPEN, open, s -> state(s).equals(state) && s.days() >= fromDays && s.days() <= toDays)
                : null;
    }

    /** Where in a list the rows of each key stand, side by side. */
    private static <T> Map<List<String>, Linked> runs(String sheet, List<T> rows, Function<T, List<String>> key) {
        Map<List<String>, Linked> runs = new HashMap<>();
        for (int first = 0, end; first < rows.size(); first = end) {
            List<String> of = key.apply(rows.get(first));
            for (end = first + 1; end < rows.size() && key.apply(rows.get(end)).equals(of); end++) {}
            runs.put(of, link(sheet, first, end - 1));
        }
        return runs;
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
        return first < 0 ? null : link(sheet, first, last);
    }

    private static Linked link(String sheet, int first, int last) {
        return new Linked(
                rows(SheetWriter.FIRST_ROW + first + 1, SheetWriter.FIRST_ROW + last + 1), sheet, first, last);
    }

    private static String rows(int first, int last) {
        return first == last ? "row " + first : "rows " + first + " to " + last;
    }
}
