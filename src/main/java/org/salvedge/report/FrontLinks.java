package org.salvedge.report;

import java.time.YearMonth;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.salvedge.yield.Deed;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.MonthWhy;

/** From what stands on the month's first page to the rows that it rests on. */
final class FrontLinks {
    static final String COMEBACKS = "Comebacks";

    private final MonthReview review;
    private final Trace trace;

    FrontLinks(MonthReview review) {
        this.review = review;
        trace = new Trace(review);
    }

    /** Name of the sheet of the figure. */
    static String sheet(String figure) {
        if (figure.startsWith("sets received")) {
            return Trace.LOTS;
        }
        return figure.startsWith("comebacks") ? COMEBACKS : Trace.SETS;
    }

    /** To the rows behind a figure of a month; null where there are none, or no list of them. */
    @Nullable
    Linked figure(String name, YearMonth when) {
        String figure = name.strip();
        if (figure.startsWith("comebacks")) {
            int rows = review.comebacks().size();
            return when.equals(review.month()) && rows > 0 ? new Linked("", COMEBACKS, 0, rows - 1) : null;
        }
        return switch (figure) {
            case "sets received" -> trace.receivedIn(when);
            case "sets decided", "sets saved", "yield", "minutes per saved set" -> trace.decidedIn(when);
            default -> trace.goneIn(when);
        };
    }

    /** To the row that says why; null where the month has none. */
    @Nullable
    Linked deed(Deed deed) {
        MonthWhy why = review.why();
        return switch (deed.kind()) {
            case PREFER ->
                row(
                        "Prefer",
                        why.preferences(),
                        p -> p.fault().equals(deed.where()) && p.fix().equals(deed.what()));
            case GIVE_UP -> row("Fixes", why.fixes(), f -> f.fault().equals(deed.where()));
            case MEND -> row("Causes", why.causes(), c -> c.what().equals(deed.what()));
            case PAY_LESS -> row("Suppliers", why.suppliers(), s -> s.supplier().equals(deed.what()));
            case LEAVE ->
                row("Margin", review.byFamily().rows(), r -> r.keys().get(0).equals(deed.what()));
            case TEST_LONGER ->
                row(
                        "Kept",
                        why.kept().stream()
                                .flatMap(k -> k.points().stream().map(p -> k.fix()))
                                .toList(),
                        fix -> fix.equals(deed.what()));
        };
    }

    private static <T> @Nullable Linked row(String sheet, List<T> rows, Predicate<T> which) {
        for (int i = 0; i < rows.size(); i++) {
            if (which.test(rows.get(i))) {
                return new Linked("", sheet, i, i);
            }
        }
        return null;
    }
}
