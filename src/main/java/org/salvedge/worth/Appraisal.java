package org.salvedge.worth;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;

/**
 * The answer to a buyer: what the lot brings, what to bid, what it means at a price, and what all that rests on.
 *
 * @param worth with a basis and a route for each line, and the doubts and assumptions as notes
 * @param confidence of the highest bid, between 0 and 1
 * @param targetReturn profit asked for, as a fraction of the outlay
 * @param price asked about; null = none
 */
public record Appraisal(
        Question question,
        LotWorth worth,
        Grounds grounds,
        Terms terms,
        double confidence,
        double targetReturn,
        @Nullable Money price) {

    /** What a price would mean, in book currency. */
    public record AtPrice(
            Money price, Money outlay, double profitMean, double pLoss, double p10, double p50, double p90) {}

    public static Appraisal of(
            ShopModel model,
            Question question,
            Terms terms,
            double confidence,
            double targetReturn,
            @Nullable Money price) {
        return of(model, question, Map.of(), terms, confidence, targetReturn, price);
    }

    /** @param found fault codes of sets that were looked at, by number of the set in the question */
    public static Appraisal of(
            ShopModel model,
            Question question,
            Map<Integer, String> found,
            Terms terms,
            double confidence,
            double targetReturn,
            @Nullable Money price) {
        LotWorth bare = model.predict(question, found);
        GroundsFinder finder = new GroundsFinder(model, question);
        Grounds grounds = finder.grounds(bare);
        List<LineWorth> lines = new ArrayList<>();
        for (int i = 0; i < bare.lines().size(); i++) {
            LineWorth l = bare.lines().get(i);
            lines.add(new LineWorth(
                    l.sheet(),
                    l.line(),
                    l.sets(),
                    l.model(),
                    l.family(),
                    l.claimed(),
                    l.recoveryMean(),
                    l.recoverySd(),
                    l.pSaved(),
                    l.minutesMean(),
                    finder.route(l),
                    grounds.lines().get(i).basis()));
        }
        List<String> notes = new ArrayList<>(bare.notes());
        notes.addAll(grounds.doubts());
        grounds.assumed().forEach(a -> notes.add("assumed: " + a));
        LotWorth worth = new LotWorth(
                bare.sets(),
                bare.historyLots(),
                bare.historySets(),
                bare.recovery(),
                bare.minutes(),
                bare.donors(),
                lines,
                notes);
        return new Appraisal(question, worth, grounds, terms, confidence, targetReturn, price);
    }

    /** The largest price that keeps the promise; empty where none does. */
    public Optional<Money> highestBid() {
        return highestBid(confidence);
    }

    /** The same at another confidence. */
    public Optional<Money> highestBid(double at) {
        return terms.highestBid(worth.recovery(), at, targetReturn);
    }

    public Optional<Money> breakEven() {
        return terms.breakEven(worth.recovery());
    }

    /** Null where no price was asked about. */
    public @Nullable AtPrice atPrice() {
        if (price == null) {
            return null;
        }
        Money outlay = terms.outlay(price);
        double paid = outlay.toDoubleForStatistics();
        Predictive r = worth.recovery();
        return new AtPrice(
                price,
                outlay,
                r.mean() - paid,
                r.below(paid),
                r.quantile(0.1) - paid,
                r.quantile(0.5) - paid,
                r.quantile(0.9) - paid);
    }
}
