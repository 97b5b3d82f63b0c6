package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.History;
import org.salvedge.shop.Nearest;
import org.salvedge.stats.Interval;
import org.salvedge.stats.ProportionInterval;

/** What could sink an answer: who sells, what was never seen, what the seller may hide, what moved or is old in the record. */
final class Doubts {
    private static final int FEW = 5;
    private static final int FEW_LOTS = 20;
    private static final int MOST_DOUBTS = 6;
    private static final double LEVEL = 0.95;
    private static final int MANY_SALES = 200;
    private static final double NOTABLE_CHANGE = 0.05;
    private static final int YEAR = 12;
    private static final double NOTABLE_MORE = 0.03;
    private static final int SILENT_DAYS = 45;

    /** @param weight number of sets it concerns */
    private record Doubt(String words, double weight) {}

    private final ShopModel model;
    private final Parts parts;
    private final History history;
    private final Question question;
    private final Lineup lineup;
    private final Evidence evidence;
    private final int supplier;

    /** @param supplier number of the question's; -1 = not on record */
    Doubts(ShopModel model, Question question, Lineup lineup, int supplier) {
        this.model = model;
        this.question = question;
        this.lineup = lineup;
        this.supplier = supplier;
        parts = model.parts();
        history = parts.records.history;
        evidence = parts.evidence;
    }

    /** @param lots bought before from the seller of the question */
    List<String> find(int lots, @Nullable LocalDate latest) {
        List<Doubt> doubts = new ArrayList<>();
        int all = question.sets().size();
        if (lots == 0 && history.lots() > 0) {
            doubts.add(new Doubt(
                    question.supplier() == null
                            ? "no supplier named (--supplier): the answer allows for good and bad ones"
                            : "nothing bought before from " + question.supplier() + meant()
                                    + ": the answer allows for good and bad sellers",
                    all));
        }
        strangers(doubts);
        if (lots > 0) {
            broken(doubts);
        }
        if (history.lots() > 0 && history.lots() < FEW_LOTS) {
            doubts.add(new Doubt(
                    "a thin record: " + history.lots() + (history.lots() == 1 ? " lot" : " lots")
                            + ", so that suppliers and lots are told apart badly",
                    all * 0.5));
        }
        double change = priceChange();
        if (Math.abs(change) >= NOTABLE_CHANGE) {
            doubts.add(new Doubt(
                    String.format(
                            Locale.ROOT,
                            "sale prices of like sets %s by %.0f %% in a year; the answer goes on from there",
                            change < 0 ? "fell" : "rose",
                            Math.abs(change) * 100),
                    all * 0.4));
        }
        if (latest != null && latest.plusDays(SILENT_DAYS).isBefore(model.asOf())) {
            doubts.add(new Doubt(
                    "the record ends on " + latest + ": nothing later is known of prices and sellers", all * 0.8));
        }
        return doubts.stream()
                .sorted(Comparator.comparingDouble((Doubt d) -> -d.weight))
                .limit(MOST_DOUBTS)
                .map(Doubt::words)
                .toList();
    }

    /** Of the last three months against the same of a year before; 0 where the record is too short to say. */
    private double priceChange() {
        int first = Integer.MAX_VALUE;
        for (int l = 0; l < history.lots(); l++) {
            first = Math.min(first, history.lotBought(l));
        }
        if (parts.sales.rows() < MANY_SALES || parts.records.months(first) > -YEAR - 4) {
            return 0;
        }
        double log = 0;
        for (int m = 0; m < 3; m++) {
            log += parts.sales.calendar().level(-m - 0.5)
                    - parts.sales.calendar().level(-YEAR - m - 0.5);
        }
        return Math.expm1(log / 3);
    }

    /** Sets of families that are not known, by the beginning of their model. */
    private void strangers(List<Doubt> doubts) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < lineup.kindOf.length; i++) {
            Kind kind = lineup.kinds[lineup.kindOf[i]];
            if (kind.family() < 0 || kind.sure() < 1) {
                Candidate c = question.sets().get(i);
                groups.computeIfAbsent(
                                Families.beginning(c.model()) + "\u0000" + kind.maker() + "\u0000" + kind.family()
                                        + "\u0000" + c.inches(),
                                k -> new ArrayList<>())
                        .add(i);
            }
        }
        for (List<Integer> group : groups.values()) {
            Candidate c = question.sets().get(group.get(0));
            Kind kind = lineup.kinds[lineup.kindOf[group.get(0)]];
            boolean named = c.model() != null && !Families.plain(c.model()).isEmpty();
            String name = named ? c.model() + alike(group) : "no model given";
            String taken = kind.family() < 0
                    ? (named ? "never seen here; " : "") + "taken as " + LineWords.any(history, c, kind)
                    : "never seen here; taken for " + history.families().text(kind.family()) + " with a chance of "
                            + LineWords.twoDigits(kind.sure());
            doubts.add(new Doubt(name + " (" + LineWords.sets(group.size()) + "): " + taken, group.size()));
        }
    }

    private String alike(List<Integer> group) {
        long models = group.stream()
                .map(i -> question.sets().get(i).model())
                .distinct()
                .count();
        return models > 1 ? " and " + (models - 1) + " alike" : "";
    }

    /** Claims under which this supplier may hide more broken glass than others do. */
    private void broken(List<Doubt> doubts) {
        int[] listed = new int[parts.records.codes.claims.size()];
        for (int k : lineup.kindOf) {
            listed[lineup.kinds[k].claim()]++;
        }
        for (int c = 0; c < listed.length; c++) {
            String claim = parts.records.codes.claims.get(c);
            int[] own = evidence.broken(c, supplier, false);
            int[] others = evidence.broken(c, supplier, true);
            if (listed[c] == 0 || claim.equals(Claim.CRACKED.code()) || own[0] < FEW || others[0] < FEW) {
                continue;
            }
            Interval range = ProportionInterval.WILSON.of(own[1], own[0], LEVEL);
            double elsewhere = (double) others[1] / others[0];
            double more = (double) own[1] / own[0] - elsewhere;
            if (more > NOTABLE_MORE) {
                String words = claim + " (" + LineWords.sets(listed[c]) + "): from this supplier "
                        + LineWords.twoDigits((double) own[1] / own[0]) + " (" + LineWords.twoDigits(range.low()) + "-"
                        + LineWords.twoDigits(range.high()) + ") had broken glass, elsewhere "
                        + LineWords.twoDigits(elsewhere);
                doubts.add(new Doubt(words, listed[c] * more * 3));
            }
        }
    }

    private String meant() {
        return question.supplier() == null
                ? ""
                : Nearest.to(question.supplier(), history.suppliers().all())
                        .map(name -> " (did you mean " + name + "?)")
                        .orElse("");
    }
}
