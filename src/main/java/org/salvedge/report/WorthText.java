package org.salvedge.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.salvedge.shop.Money;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.LineWorth;
import org.salvedge.worth.PastBids;
import org.salvedge.worth.Predictive;
import org.salvedge.worth.turn.StopTable;

/** The answer to a buyer for a terminal: the answer, what carries it, what could sink it, what would change it, what it rests on. */
public final class WorthText {
    private static final int CELLS = 46;
    private static final double TAIL = 0.005;
    private static final double[] CONFIDENCES = {0.5, 0.75, 0.8, 0.9, 0.95};
    private static final int MINUTES_AN_HOUR = 60;

    private final Appraisal a;
    private final PastBids bids;
    private final StopTable stops;
    private final Screen screen;
    private final List<String> lines = new ArrayList<>();

    private WorthText(Appraisal a, PastBids bids, StopTable stops, Screen screen) {
        this.a = a;
        this.bids = bids;
        this.stops = stops;
        this.screen = screen;
    }

    /**
     * Lines for the screen, of which none holds what a terminal would obey.
     *
     * @param from where the list was read from, in words
     */
    public static List<String> of(Appraisal a, PastBids bids, StopTable stops, String from, Screen screen) {
        WorthText text = new WorthText(a, bids, stops, screen);
        text.head(from);
        text.answer();
        text.shape();
        text.carries();
        text.donors();
        text.sinks();
        text.changes();
        text.stops();
        text.past();
        text.rests();
        return text.lines;
    }

    private void say(String line) {
        lines.add(Visible.text(line, screen));
    }

    /** Text of any length, broken between words. */
    private void paragraph(String text) {
        lines.addAll(Paragraph.lines("  ", Visible.text(text, screen), screen.width()));
    }

    private void head(String from) {
        long families = a.worth().lines().stream()
                .map(LineWorth::family)
                .filter(f -> !f.isEmpty())
                .distinct()
                .count();
        int before = a.grounds().lotsOfSupplier();
        String seller = a.question().supplier() == null
                ? ""
                : ", from " + a.question().supplier() + " (" + Plural.of(before, "lot") + " before)";
        lines.addAll(Paragraph.lines(
                "",
                Visible.text(
                        Plural.of(a.worth().sets(), "set") + ", " + families + (families == 1 ? " family" : " families")
                                + seller + ", " + from,
                        screen),
                screen.width()));
        say("");
    }

    private void answer() {
        Predictive r = a.worth().recovery();
        Predictive m = a.worth().minutes();
        String promise = a.targetReturn() == 0
                ? "to make money "
                : "to make " + Digits.upTo(BigDecimal.valueOf(a.targetReturn() * 100), 1) + " % on the outlay ";
        figure("Bid up to", down(a.highestBid()), promise + Odds.words(a.confidence()));
        figure("Break-even bid", down(a.breakEven()), "profit 0 on average");
        figure(
                "It should bring",
                whole(r.mean()),
                "80 % between " + whole(r.quantile(0.1)) + " and " + whole(r.quantile(0.9))
                        + ", before you pay for it");
        figure(
                "Bench time",
                whole(m.mean() / MINUTES_AN_HOUR) + " h",
                "80 % between " + whole(m.quantile(0.1) / MINUTES_AN_HOUR) + " and "
                        + whole(m.quantile(0.9) / MINUTES_AN_HOUR));
        Appraisal.AtPrice at = a.atPrice();
        if (at != null) {
            figure(
                    "Profit at " + Digits.grouped(at.price().amount(), 0),
                    signed(at.profitMean()),
                    "80 % between " + whole(at.p10()) + " and " + whole(at.p90()) + "; loss "
                            + (at.pLoss() < 0.01 ? "< 0.01" : String.format(Locale.ROOT, "%.2f", at.pLoss()))
                            + "; outlay " + Digits.grouped(at.outlay().amount(), 0));
        }
        say("");
    }

    private void figure(String name, String value, String meaning) {
        String line = String.format(Locale.ROOT, "  %-18s %9s   %s", name, value, meaning);
        lines.addAll(Paragraph.lines(line, screen.width(), 34));
    }

    private void shape() {
        Predictive r = a.worth().recovery();
        double low = r.quantile(TAIL);
        double high = r.quantile(1 - TAIL);
        if (!(high > low)) {
            return;
        }
        String from = "  " + whole(low) + " |";
        String to = "| " + whole(high);
        int cells = Math.min(CELLS, screen.width() - from.length() - to.length());
        double[] share = new double[cells];
        for (int i = 0; i < cells; i++) {
            share[i] = r.below(low + (high - low) * (i + 1) / cells) - r.below(low + (high - low) * i / cells);
        }
        say(from + Shapes.spark(share, screen) + to);
        say("");
    }

    private void carries() {
        lines.addAll(new TablePrinter(screen, null)
                .print(WhatCarries.table(a))
                .lines()
                .toList());
    }

    private void donors() {
        List<DonorReport.Said> said = DonorReport.words(a.worth().donors());
        if (!said.isEmpty()) {
            say("Boards out of donors");
            said.forEach(s -> paragraph(s.words()));
        }
    }

    private void sinks() {
        if (!a.grounds().doubts().isEmpty()) {
            say("What could sink it");
            a.grounds().doubts().forEach(this::paragraph);
        }
        if (!a.grounds().assumed().isEmpty()) {
            say("Assumed, as the record says little");
            a.grounds().assumed().forEach(t -> paragraph("assumed: " + t));
        }
    }

    private void changes() {
        say("What would change it");
        StringBuilder odds = new StringBuilder("  to make money   ");
        StringBuilder bids = new StringBuilder("  bid up to       ");
        List<String> stacked = new ArrayList<>();
        for (double confidence : CONFIDENCES) {
            String chance = Odds.words(confidence).replace("times ", "").replace("time ", "");
            String bid = down(a.highestBid(confidence));
            odds.append(String.format(Locale.ROOT, "%10s", chance));
            bids.append(String.format(Locale.ROOT, "%10s", bid));
            stacked.add(String.format(Locale.ROOT, "  to make money %-8s  bid up to %8s", chance, bid));
        }
        if (Math.max(odds.length(), bids.length()) <= screen.width()) {
            say(odds.toString());
            say(bids.toString());
        } else {
            stacked.forEach(line -> lines.addAll(Paragraph.lines(line, screen.width(), 4)));
        }
        double perUnit = a.worth().minutes().mean() / MINUTES_AN_HOUR;
        paragraph("Each 1 more for an hour at the bench (--labour) takes " + whole(perUnit) + " off what it brings.");
    }

    private void stops() {
        if (!stops.rows().isEmpty()) {
            TablePrinter printer = new TablePrinter(screen, null);
            Table table = StopReport.table(stops);
            if (screen.width() == Screen.WIDEST || printer.fits(table)) {
                lines.addAll(printer.print(table).lines().toList());
            } else {
                say(StopReport.HEADING);
                StopReport.sentences(stops).forEach(this::paragraph);
            }
            if (stops.beyondLabour() > 0) {
                paragraph("(more work than time: a minute counts at labour and "
                        + String.format(Locale.ROOT, "%.2f", stops.beyondLabour()) + " beyond)");
            }
        }
    }

    /** How limits stood to hammer prices so far. */
    private void past() {
        if (bids.kept() == 0) {
            return;
        }
        StringBuilder words = new StringBuilder("Bids kept");
        words.append(bids.supplier() == null ? "" : " on lots of " + bids.supplier())
                .append(": ")
                .append(bids.kept())
                .append(", won ")
                .append(bids.won())
                .append(String.format(
                        Locale.ROOT,
                        "; the limit stood at %.2f of the hammer price in the middle.",
                        bids.limitOverHammer()));
        if (!bids.overWorth().isEmpty()) {
            double mean = a.worth().recovery().mean();
            words.append(String.format(
                            Locale.ROOT,
                            " They went for %.2f of what they should bring (8 in 10: %.2f-%.2f)",
                            bids.overWorth().get(1),
                            bids.overWorth().get(0),
                            bids.overWorth().get(2)))
                    .append(", which here is ")
                    .append(whole(bids.overWorth().get(1) * mean))
                    .append(" (")
                    .append(whole(bids.overWorth().get(0) * mean))
                    .append("-")
                    .append(whole(bids.overWorth().get(2) * mean))
                    .append(").");
        }
        paragraph0(words.toString());
    }

    private void rests() {
        String latest =
                a.grounds().latest() == null ? "" : " up to " + a.grounds().latest();
        paragraph0("Rests on " + Plural.of(a.worth().historyLots(), "lot") + ", "
                + Plural.of(a.worth().historySets(), "set") + latest + ". Whether such answers held: `hindsight`.");
    }

    private void paragraph0(String text) {
        lines.addAll(Paragraph.lines("", Visible.text(text, screen), screen.width()));
    }

    private static String whole(double amount) {
        return Digits.grouped(amount, 0);
    }

    private static String signed(double amount) {
        return (amount > 0 ? "+" : "") + whole(amount);
    }

    /** A price rounded down to whole units, never above what may be paid. */
    private static String down(Optional<Money> price) {
        return price.map(p -> Digits.grouped(p.amount().setScale(0, RoundingMode.DOWN), 0))
                .orElse("none");
    }
}
