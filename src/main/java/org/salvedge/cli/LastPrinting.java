package org.salvedge.cli;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.ledger.Printing;
import org.salvedge.ledger.Recorded;
import org.salvedge.report.SincePrinting;
import org.salvedge.shop.AsOf;
import org.salvedge.yield.MonthReview;

/**
 * When a month was last printed, and what was recorded since.
 *
 * @param last the last entry on record now
 * @param printing null = it was never printed
 */
record LastPrinting(YearMonth month, long last, @Nullable Printing printing, List<Recorded> recorded) {

    /** To be read before the record is: what comes in between is told once more, and nothing is left out. */
    static LastPrinting of(Ledger ledger, YearMonth month, @Nullable LocalDate asOf) {
        long last = ledger.printings().lastEntry();
        Printing printing = ledger.printings().latest(month, asOf).orElse(null);
        List<Recorded> recorded = printing == null
                ? List.of()
                : ledger.printings().recordedAfter(printing.last(), new AsOf(month.atEndOfMonth(), asOf));
        return new LastPrinting(month, last, printing, recorded);
    }

    boolean never() {
        return printing == null;
    }

    @Nullable
    SincePrinting since(Session session, MonthReview review) {
        return printing == null
                ? null
                : SincePrinting.of(
                        LocalDateTime.ofInstant(
                                printing.at(), session.shop().settings().zone()),
                        recorded,
                        printing.figures(),
                        SincePrinting.figures(review, session.shop().settings().labourRate()));
    }

    /** Keeps that it was printed; where the ledger cannot be written, says so. */
    void note(Session session, MonthReview review) {
        try (Ledger ledger = session.shop().open()) {
            ledger.printings()
                    .add(
                            month,
                            last,
                            SincePrinting.figures(
                                    review, session.shop().settings().labourRate()));
        } catch (LedgerFailure e) {
            session.remark("This printing could not be noted, so that the next one cannot say what was recorded since: "
                    + e.getMessage());
        }
    }

    static Map<String, Object> json(SincePrinting since) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("printed_at", since.printed().withNano(0).toString());
        List<Map<String, Object>> kinds = new ArrayList<>();
        for (Recorded kind : since.recorded()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("kind", kind.kind());
            one.put("recorded", kind.recorded());
            one.put("corrected", kind.corrected());
            one.put("taken_back", kind.takenBack());
            one.put("sets", kind.sets().stream().map(u -> u.value()).toList());
            kinds.add(one);
        }
        json.put("entries", kinds);
        List<Map<String, Object>> moved = new ArrayList<>();
        for (SincePrinting.Moved m : since.moved()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("figure", m.figure());
            one.put("then", m.then());
            one.put("now", m.now());
            one.put("by", m.by());
            moved.add(one);
        }
        json.put("moved", moved);
        return json;
    }
}
