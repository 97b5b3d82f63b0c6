package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
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

/** Looks up what an answer rests on. */
final class GroundsFinder {
    private static final int FEW = 5;
    private static final int FEW_LOTS = 20;
    private static final int FEW_SALES = 30;
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

    GroundsFinder(ShopModel model, Question question) {
        this.model = model;
        this.question = question;
        parts = model.parts();
        history = parts.records.history;
        lineup = new Lineup(parts, question.sets());
        evidence = parts.evidence;
        supplier = question.supplier() == null ? -1 : history.suppliers().find(question.supplier());
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
        return new Grounds(lots, latest, lines(worth), doubts(lots, latest), assumed());
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
                    (kind.why() == null ? "family not known" : kind.why()) + "; taken as " + any(set, kind), false, 0);
        }
        int n = evidence.of(kind.family(), kind.claim());
        int family = evidence.family(kind.family());
        String words;
        if (n >= FEW) {
            words = sets(n) + " of this family and claim";
        } else if (family > n) {
            words = (n == 0 ? "no set" : sets(n)) + " of this family and claim, " + family + " of the family, "
                    + evidence.claim(kind.claim()) + " with the claim";
        } else {
            words = (n == 0 ? "no set" : sets(n)) + " of this family, " + evidence.claim(kind.claim())
                    + " with the claim in others";
        }
        if (!certain) {
            words = kind.why() + ", of its family with a chance of " + twoDigits(kind.sure()) + "; " + words;
        }
        return new LineGrounds(words, certain, n);
    }

    private static String sets(int n) {
        return n == 1 ? "1 set" : n + " sets";
    }

    /** {@code a 55-inch set}, {@code an 85-inch set}. */
    private static String sized(long inches) {
        boolean vowel = inches == 8 || inches == 11 || inches == 18 || inches / 10 == 8;
        return (vowel ? "an " : "a ") + inches + "-inch set";
    }

    private String any(Candidate set, Kind kind) {
        String size = set.inches() == null ? "a set of any size" : sized(Math.round(set.inches()));
        return size + " of "
                + (kind.maker() < 0 ? "any maker" : history.makers().text(kind.maker()));
    }

    private String meant() {
        return question.supplier() == null
                ? ""
                : Nearest.to(question.supplier(), history.suppliers().all())
                        .map(name -> " (did you mean " + name + "?)")
                        .orElse("");
    }

    private List<String> doubts(int lots, @Nullable LocalDate latest) {
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
                    ? (named ? "never seen here; " : "") + "taken as " + any(c, kind)
                    : "never seen here; taken for " + history.families().text(kind.family()) + " with a chance of "
                            + twoDigits(kind.sure());
            doubts.add(new Doubt(name + " (" + sets(group.size()) + "): " + taken, group.size()));
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
                String words = claim + " (" + sets(listed[c]) + "): from this supplier "
                        + twoDigits((double) own[1] / own[0]) + " (" + twoDigits(range.low()) + "-"
                        + twoDigits(range.high()) + ") had broken glass, elsewhere " + twoDigits(elsewhere);
                doubts.add(new Doubt(words, listed[c] * more * 3));
            }
        }
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

    private static String twoDigits(double share) {
        return String.format(Locale.ROOT, "%.2f", share);
    }
}
