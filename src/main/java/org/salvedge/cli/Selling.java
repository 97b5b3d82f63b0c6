package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.bench.SellingAdvice;
import org.salvedge.bench.SellingAdvice.Offered;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Plural;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Residual;
import org.salvedge.shop.TvSet;
import org.salvedge.worth.SalePrice;

/** A set that passed and waits for a buyer: what to ask, when to lower it, what the buyer must be told. */
final class Selling {
    private final Session session;
    private final Ledger ledger;
    private final LocalDate today;

    Selling(Session session, Ledger ledger) {
        this.session = session;
        this.ledger = ledger;
        today = session.today();
    }

    void say(TvSet set, List<Entry> entries) {
        SellingAdvice advice = advice(set, entries);
        if (advice != null) {
            Wording.say(session, words(advice, entries));
        }
        List<String> told = buyer(set, entries);
        if (!told.isEmpty()) {
            session.say("For the buyer:");
            told.forEach(line -> Wrap.at(Wording.width(session) - 2, line).forEach(l -> session.say("  " + l)));
        }
    }

    Map<String, @Nullable Object> json(TvSet set, List<Entry> entries) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        SellingAdvice advice = advice(set, entries);
        if (advice != null) {
            json.put("ask", advice.ask());
            json.put("expected", advice.expected());
            json.put("low", advice.low());
            json.put("high", advice.high());
            json.put("days_to_sale", advice.days());
            json.put("lower_after", advice.lowerAfter());
            json.put("lower_to", advice.lowerTo());
            json.put("offers", advice.offers());
            json.put("assumed", advice.assumed());
        }
        json.put("buyer_text", buyer(set, entries));
        return json;
    }

    private @Nullable SellingAdvice advice(TvSet set, List<Entry> entries) {
        if (ledger.nextAttempt() > BenchPlan.QUICKLY_READ) {
            return null;
        }
        History history = ledger.history(AsOf.NOW, Ledger.Detail.FULL);
        SalePrice price = SalePrice.fit(history, today, session.shop().settings());
        double inches = set.inches() == null ? 0 : set.inches().toDouble();
        Grade grade = grade(entries);
        List<Offered> all = new ArrayList<>();
        List<Offered> family = new ArrayList<>();
        offered(history, all, family, set.family());
        return SellingAdvice.of(
                months -> price.median(set.family(), set.maker(), inches, grade, months),
                price.spread(),
                List.of(family, all));
    }

    private static @Nullable Grade grade(List<Entry> entries) {
        Grade grade = null;
        for (Attempt a : SetNotes.attempts(entries)) {
            grade = a.grade() == null ? grade : a.grade();
        }
        return grade;
    }

    private void offered(History h, List<Offered> all, List<Offered> family, String of) {
        Map<String, List<Offer>> offers = new HashMap<>();
        for (Offer o : ledger.all(Offer.class)) {
            offers.computeIfAbsent(o.unit().value(), u -> new ArrayList<>()).add(o);
        }
        double unit = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        for (int set = 0; set < h.sets(); set++) {
            List<Offer> made = offers.get(h.label(set));
            if (made == null) {
                continue;
            }
            int last = h.exitStart(set + 1) - 1;
            boolean sold = last >= h.exitStart(set) && h.exitKind(last) == ExitKind.SOLD.ordinal();
            boolean gone = last >= h.exitStart(set) && h.exitGone(last) == 1;
            LocalDate end = gone ? LocalDate.ofEpochDay(h.exitDay(last)) : today;
            Offer first = made.stream().min(Comparator.comparing(Offer::on)).orElseThrow();
            if (first.on().isAfter(end)) {
                continue;
            }
            Offered offered = new Offered(
                    first.on(),
                    first.price().toDoubleForStatistics(),
                    sold && gone ? end : null,
                    end,
                    sold ? h.exitGross(last) / unit : 0);
            all.add(offered);
            if (h.families().text(h.setFamily(set)).equals(of)) {
                family.add(offered);
            }
        }
    }

    private String words(SellingAdvice a, List<Entry> entries) {
        StringBuilder words = new StringBuilder(String.format(
                Locale.ROOT,
                "Ask %.0f: such a set sells for %.0f (three in five between %.0f and %.0f)",
                a.ask(),
                a.expected(),
                a.low(),
                a.high()));
        if (a.assumed()) {
            words.append(String.format(
                    Locale.ROOT,
                    ", at %.2f of the first offer (assumed). If it still stands after %d days (assumed), lower it to %.0f.",
                    a.concession(),
                    a.lowerAfter(),
                    a.lowerTo()));
        } else {
            words.append(String.format(Locale.ROOT, ", at %.2f of the first offer. ", a.concession()));
            words.append(a.days() == null ? "" : String.format(Locale.ROOT, "Half sell within %.0f days; ", a.days()));
            words.append(String.format(
                    Locale.ROOT,
                    "if it still stands after %d, lower it to %.0f (%s).",
                    a.lowerAfter(),
                    a.lowerTo(),
                    Plural.of(a.offers(), "set") + " on offer so far"));
        }
        Offer now = SetNotes.standing(entries, Offer.class).stream()
                .max(Comparator.comparing(Offer::on))
                .orElse(null);
        Offer first = SetNotes.standing(entries, Offer.class).stream()
                .min(Comparator.comparing(Offer::on))
                .orElse(null);
        if (now != null && first != null) {
            long days = today.toEpochDay() - first.on().toEpochDay();
            Money price = now.price();
            words.append(" On offer at ").append(price).append(", for ").append(Plural.of(days, "day"));
            words.append(
                    days > a.lowerAfter() && price.toDoubleForStatistics() > a.lowerTo() ? ": lower it now." : ".");
        }
        return words.toString();
    }

    /** What the buyer must be told of a workaround, in plain words; empty where there is none. */
    private static List<String> buyer(TvSet set, List<Entry> entries) {
        List<Attempt> attempts = SetNotes.attempts(entries);
        if (!ReleaseChecks.of(attempts, SetNotes.standing(entries, Comeback.class))
                .workaround()) {
            return List.of();
        }
        Attempt mask = attempts.get(0);
        for (Attempt a : attempts) {
            mask = a.fix().equals(Fix.CONTACT_MASK) && Boolean.TRUE.equals(a.passed()) ? a : mask;
        }
        String distance = set.inches() == null || set.rows() == null
                ? "the usual viewing distance"
                : Distance.shortly(set.inches().toDouble(), set.rows());
        List<String> told = new ArrayList<>();
        told.add(
                "This set had lines on the screen. One side of its panel is faulty and was switched off by insulating contacts;"
                        + " the other side now drives the picture alone. This is a workaround: the fault itself was not mended, and the"
                        + " panel cannot be mended by replacing a part in it.");
        told.add("Seen from " + distance + ": " + seen(mask.residualViewing(), "no trace was noted")
                + ". Seen close up: "
                + seen(mask.residualClose(), "very faint lines or slightly faded colours on one side are possible")
                + ".");
        return told;
    }

    private static String seen(@Nullable Residual residual, String unknown) {
        if (residual == null) {
            return unknown;
        }
        return switch (residual) {
            case NONE -> "no trace";
            case FAINT -> "faint traces";
            case VISIBLE -> "visible traces";
        };
    }
}
