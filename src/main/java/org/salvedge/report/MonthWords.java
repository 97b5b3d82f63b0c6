package org.salvedge.report;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.Money;
import org.salvedge.yield.Bridge;
import org.salvedge.yield.Cause;
import org.salvedge.yield.ChangeSplit;
import org.salvedge.yield.Deed;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Range;
import org.salvedge.yield.Signals;

/** The review in sentences, made of the figures that stand below them. */
public final class MonthWords {
    private static final double LUCK = 0.0001;
    private static final double CLEAR = 0.5;

    private final MonthReview review;
    private final String currency;
    private final int digits;

    public MonthWords(MonthReview review) {
        this.review = review;
        currency = review.currency().getCurrencyCode();
        digits = Math.max(0, review.currency().getDefaultFractionDigits());
    }

    /** Three: what the month brought, why it differs, what it earned. */
    public List<String> sentences() {
        return List.of(outcome(), why(), money());
    }

    private String outcome() {
        MonthFigures now = review.now();
        if (now.counted().decided() == 0) {
            return "No set was decided in " + review.month() + ".";
        }
        String text = "Of " + Plural.of(now.counted().decided(), "set") + " decided in " + review.month() + ", "
                + Digits.grouped(now.counted().saved()) + (now.counted().saved() == 1 ? " was" : " were")
                + " saved: yield "
                + percent(now.counted().raw()) + " % (95 %: "
                + percent(now.counted().rawLow()) + " to "
                + percent(now.counted().rawHigh()) + ")";
        List<String> against = new ArrayList<>();
        compare(now, review.before(), "the month before", against);
        compare(now, review.yearAgo(), "a year before", against);
        return against.isEmpty() ? text + "." : text + ", " + String.join(" and ", against) + ".";
    }

    private static void compare(MonthFigures now, MonthFigures then, String when, List<String> to) {
        if (then.counted().decided() > 0) {
            double points = 100 * (now.counted().raw() - then.counted().raw());
            String was = " (" + percent(then.counted().raw()) + " %)";
            to.add(
                    Digits.grouped(Math.abs(points), 1).equals("0.0")
                            ? "as " + when + was
                            : Digits.grouped(Math.abs(points), 1) + " points " + (points > 0 ? "above " : "below ")
                                    + when + was);
        }
    }

    private String why() {
        List<Cause> causes = review.why().causes();
        if (causes.isEmpty()) {
            return "The record is too thin to say why months differ.";
        }
        List<Cause> sure = causes.stream().filter(Cause::standsOut).toList();
        if (!sure.isEmpty()) {
            String text = "Likely cause: " + cause(sure.get(0));
            return text + (sure.size() == 1 ? "" : "; besides, " + cause(sure.get(1))) + slower() + ".";
        }
        return (review.why().signals().yieldSignal(review.month())
                        ? "The yield is a signal on its chart, but no single cause stands out"
                        : "No change of yield or prices beyond chance, set against the twelve months before")
                + parts() + slower() + ".";
    }

    /** What the chart of minutes says, where it says something. */
    private String slower() {
        Signals.Point point = review.why().signals().minutesSignal(review.month());
        if (point == null) {
            return "";
        }
        double away = 100 * (point.value() / point.centre() - 1);
        return "; fixes took " + Digits.grouped(Math.abs(away), 0) + " % " + (away > 0 ? "more" : "less")
                + " time than usual, a signal on their chart";
    }

    private String parts() {
        ChangeSplit split = review.why().yieldByFault();
        return Double.isNaN(split.mix())
                ? ""
                : "; of the change to the month before, " + points(split.mix())
                        + " points are another mix of families and faults, " + points(split.rate())
                        + " other rates within them";
    }

    private static String points(double share) {
        String text = Digits.grouped(100 * share, 1);
        return share > 0 && !text.equals("0.0") ? "+" + text : text;
    }

    /** One cause in words, without a full stop. */
    public String cause(Cause cause) {
        String what = Visible.text(cause.what());
        String luck = " (chance that this is luck: "
                + (cause.adjusted() < LUCK ? "under 0.01" : Digits.grouped(100 * cause.adjusted(), 2)) + " %)";
        String sets = Digits.grouped(Math.abs(cause.effect()) * cause.sets(), 0) + " sets ";
        return switch (cause.kind()) {
            case FIX ->
                what + " works " + (cause.up() ? "more" : "less") + " often than in the twelve months before, about "
                        + sets + (cause.up() ? "more saved" : "fewer saved") + luck;
            case SUPPLIER ->
                "sets from " + what + " are " + (cause.up() ? "better" : "worse")
                        + " than its earlier ones with the same claims, about " + sets
                        + (cause.up() ? "more" : "fewer") + " that can be saved" + luck;
            case MIX ->
                "another mix of families and faults came to the bench, about " + sets + (cause.up() ? "more" : "fewer")
                        + " that can be saved" + luck;
            case PRICE ->
                "the same sets sell for " + Digits.grouped(100 * Math.abs(cause.effect()), 0) + " % "
                        + (cause.up() ? "more" : "less") + " than the months before foretold" + luck;
        };
    }

    private String money() {
        Bridge now = review.bridge();
        if (now.sets() == 0) {
            return "No set left, so no margin is final.";
        }
        Range each = review.now().marginPerSet();
        String text = Plural.of(now.sets(), "set") + " left with a margin of " + whole(now.margin())
                + (each.known() ? ", " + amount(each.value()) + " a set (95 %: " + range(each) + ")" : "");
        Range then = review.before().marginPerSet();
        if (each.known() && then.known()) {
            double more = each.value() - then.value();
            text += Math.abs(more) < CLEAR / Math.pow(10, digits)
                    ? ", as the month before"
                    : ", " + amount(Math.abs(more)) + (more > 0 ? " more" : " less") + " than the month before";
        }
        return text + ".";
    }

    /** What to do, without its worth; where that may be nothing, it says so. */
    public String deed(Deed deed) {
        return whatToDo(deed) + (deed.worth().low() < 0 ? " Not sure." : "");
    }

    private String whatToDo(Deed deed) {
        String what = Visible.text(deed.what());
        return switch (deed.kind()) {
            case PREFER -> "On " + deed.where() + ", try " + what + " before " + deed.instead() + ".";
            case GIVE_UP -> "Give up sets with " + deed.where() + " at once: " + what + " costs more than it saves.";
            case MEND -> "Find out why " + what + " works less often than it did.";
            case PAY_LESS -> "Pay " + what + " less: its lots bring less for their money.";
            case LEAVE -> "Pay less for family " + what + ", or leave it: its sets lost " + each(deed) + " each.";
            case TEST_LONGER -> "Test longer after " + what + ": more of its sets come back.";
        };
    }

    private String each(Deed deed) {
        return amount(deed.worth().value() / deed.sets());
    }

    /** From one amount to another, whole units. */
    public String worth(Range range) {
        return Digits.grouped(range.low(), 0) + " to " + Digits.grouped(range.high(), 0);
    }

    private String range(Range range) {
        return Digits.grouped(range.low(), digits) + " to " + Digits.grouped(range.high(), digits);
    }

    private String amount(double units) {
        return Digits.grouped(units, digits) + " " + currency;
    }

    private String whole(Money money) {
        return Digits.grouped(money.amount(), digits) + " " + currency;
    }

    private static String percent(double share) {
        return Digits.grouped(share * 100, 1);
    }
}
