package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.History;

/** Looks up what an answer rests on. */
final class GroundsFinder {
    private static final int FEW = 5;
    private static final int FEW_SALES = 30;

    private final Parts parts;
    private final History history;
    private final Question question;
    private final Lineup lineup;
    private final Evidence evidence;
    private final int supplier;
    private final Doubts doubts;

    GroundsFinder(ShopModel model, Question question) {
        this.question = question;
        parts = model.parts();
        history = parts.records.history;
        lineup = new Lineup(parts, question.sets());
        evidence = parts.evidence;
        supplier = question.supplier() == null ? -1 : history.suppliers().find(question.supplier());
        doubts = new Doubts(model, question, lineup, supplier);
    }

    /** What most likely becomes of a set of the line. */
    Route route(LineWorth line) {
        int claim = parts.records.codes.claim(new Claim(line.claimed()));
        return evidence.route(claim, line.pSaved());
    }

    Grounds grounds(LotWorth worth) {
        int lots = 0;
        for (int l = 0; l < history.lots(); l++) {
            lots += history.lotSupplier(l) == supplier ? 1 : 0;
        }
        LocalDate latest = latest();
        return new Grounds(lots, latest, lines(worth), doubts.find(lots, latest), assumed());
    }

    private List<LineGrounds> lines(LotWorth worth) {
        Map<List<Object>, Integer> first = new HashMap<>();
        List<Candidate> sets = question.sets();
        for (int i = 0; i < sets.size(); i++) {
            first.putIfAbsent(key(sets.get(i).sheet(), sets.get(i).line(), i), i);
        }
        List<LineGrounds> lines = new ArrayList<>();
        int next = 0;
        for (LineWorth line : worth.lines()) {
            // A line without a number is a set of its own, and lines stand in the order of their first sets.
            int i = line.line() == null ? next : first.getOrDefault(key(line.sheet(), line.line(), 0), next);
            next = i + 1;
            lines.add(basis(sets.get(i), lineup.kinds[lineup.kindOf[i]]));
        }
        return lines;
    }

    private static List<Object> key(@Nullable String sheet, @Nullable Integer line, int i) {
        return List.of(String.valueOf(sheet), line == null ? "set " + i : line);
    }

    private LineGrounds basis(Candidate set, Kind kind) {
        boolean certain = kind.family() >= 0 && kind.sure() >= 1;
        if (evidence.all() == 0) {
            return new LineGrounds("assumed: no set on record has a known fate", certain, 0);
        }
        if (kind.family() < 0) {
            return new LineGrounds(
                    (kind.why() == null ? "family not known" : kind.why()) + "; taken as "
                            + LineWords.any(history, set, kind),
                    false,
                    0);
        }
        int n = evidence.of(kind.family(), kind.claim());
        int family = evidence.family(kind.family());
        String words;
        if (n >= FEW) {
            words = LineWords.sets(n) + " of this family and claim";
        } else if (family > n) {
            words = (n == 0 ? "no set" : LineWords.sets(n)) + " of this family and claim, " + family
                    + " of the family, " + evidence.claim(kind.claim()) + " with the claim";
        } else {
            words = (n == 0 ? "no set" : LineWords.sets(n)) + " of this family, " + evidence.claim(kind.claim())
                    + " with the claim in others";
        }
        if (!certain) {
            words = kind.why() + ", of its family with a chance of " + LineWords.twoDigits(kind.sure()) + "; " + words;
        }
        return new LineGrounds(words, certain, n);
    }

    private List<String> assumed() {
        List<String> assumed = new ArrayList<>();
        double hourly = parts.hourly;
        if (parts.sales.rows() < FEW_SALES) {
            assumed.add(String.format(
                    Locale.ROOT,
                    "a working 50-inch set sells for about %.0f (%s on record), its parts for %.0f %% of that",
                    Assumed.PRICE_HOURS * hourly,
                    parts.sales.rows() == 1 ? "1 sale" : parts.sales.rows() + " sales",
                    Assumed.STRIP_SHARE * 100));
        }
        StringBuilder faults = new StringBuilder();
        for (int k = 0; k < parts.records.codes.faults.size(); k++) {
            String code = parts.records.codes.faults.get(k);
            if (!code.isEmpty() && evidence.fault(k) < FEW && k != parts.records.codes.broken) {
                Assumed.AtBench a = Assumed.fault(code);
                faults.append(faults.isEmpty() ? "" : ", ")
                        .append(String.format(Locale.ROOT, "%s %.2f in %.0f min", code, a.saved(), a.minutes()));
            }
        }
        if (!faults.isEmpty()) {
            assumed.add("share saved by fault, where fewer than " + FEW + " are on record: " + faults);
        }
        return assumed;
    }

    private @Nullable LocalDate latest() {
        int day = parts.records.latest;
        return day == Integer.MIN_VALUE ? null : LocalDate.ofEpochDay(day);
    }
}
