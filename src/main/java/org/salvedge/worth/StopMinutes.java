package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;
import org.salvedge.stats.StopRule;

/**
 * The minute after which going on with a set loses money, by family, fault and fix, out of the shop's own record.
 *
 * <p>With the chance to succeed by each minute (minutes summed over a set's attempts at the fault), the gain if saved over
 * stripping and the cost of a minute, one goes on while the best future stretch has positive expected gain ({@link StopRule}).
 * Give-ups say nothing of the minutes not tried, or everything: the stop minute stands between these two, which are its band.
 * A family's curve is mixed with that of all families, as far as its record is thin, and that with what is assumed of the fault.
 */
public final class StopMinutes {
    private static final double FAMILY_WORTH = 15;
    private static final double ASSUMED_WORTH = 5;

    /**
     * Where to stop.
     *
     * @param minute since the first work on this fault, after which to give up; 0 = do not begin
     * @param low the same if sets given up would never have been saved, or the less of both
     * @param high the same if giving up says nothing of what more minutes would have brought
     * @param gain expected of going on until then over stripping at once, after labour and parts, book currency; never negative
     * @param chance to succeed until then
     * @param minutes expected to be spent
     * @param gainIfSaved what a saved set brings over a stripped one, before labour and parts
     * @param sets sets of the family with this fault (and fix) on record with known minutes
     * @param others the same of other families
     */
    public record Stop(
            int minute,
            int low,
            int high,
            double gain,
            double chance,
            double minutes,
            double gainIfSaved,
            int sets,
            int others) {
        /** Whether hardly anything but what is assumed stands behind it. */
        public boolean assumed() {
            return sets + others < ASSUMED_WORTH;
        }
    }

    /** A family (-1 = all), a fault and a fix (-1 = all). */
    private record Key(int family, int fault, int fix) {}

    /** Curves of one key: give-ups censored, and as failures. */
    private record Curves(SuccessCurve censored, SuccessCurve failures, int sets, double parts) {}

    private final History history;
    private final SetValues values;
    private final double perMinute;
    private final Map<Key, List<Turns.Turn>> turns = new HashMap<>();
    private final Map<Key, Curves> curves = new HashMap<>();

    private StopMinutes(Records records, double hourly) {
        history = records.history;
        perMinute = hourly / 60;
        values = new SetValues(records, hourly);
        for (Turns.Turn t : new Turns(history).all()) {
            turns.computeIfAbsent(new Key(t.family(), t.fault(), t.fix()), k -> new ArrayList<>())
                    .add(t);
            turns.computeIfAbsent(new Key(-1, t.fault(), t.fix()), k -> new ArrayList<>())
                    .add(t);
        }
    }

    /**
     * @param history the record as it stood at the end of {@code asOf}, with every column
     * @param settings for the labour rate
     */
    public static StopMinutes of(History history, LocalDate asOf, Settings settings) {
        double hourly = settings.labourRate().doubleValue();
        return new StopMinutes(new Records(history, (int) asOf.toEpochDay(), hourly / 60), hourly);
    }

    /** Out of the record that a model rests on. */
    static StopMinutes of(ShopModel model) {
        return new StopMinutes(model.parts().records, model.parts().hourly);
    }

    /** What a saved set of the family brings over a stripped one, before bench labour and parts; book currency. */
    public double gainIfSaved(String family) {
        int f = history.families().find(family);
        return values.saved(f) - values.stripped(f);
    }

    /** What a set of the family brings when it is stripped, after the labour of stripping; book currency. */
    public double ifStripped(String family) {
        return values.stripped(history.families().find(family));
    }

    /**
     * For a set that no work has been done on yet for this fault.
     *
     * @param family as in the history; one that is not there counts as any
     * @param fix null = whatever the shop does about the fault
     */
    public Stop stop(String family, String fault, @Nullable String fix) {
        return stop(family, fault, fix, 0, perMinute);
    }

    /**
     * @param spent minutes already spent on this fault of the set
     * @param costOfMinute labour, or the shadow price of bench time; above or equal 0, book currency
     */
    public synchronized Stop stop(
            String family, String fault, @Nullable String fix, double spent, double costOfMinute) {
        int f = history.families().find(family);
        int k = history.faults().find(fault);
        int x = fix == null ? -1 : history.fixes().find(fix);
        Curves shop = k < 0 || fix != null && x < 0 ? nothing(fault) : pooled(new Key(-1, k, x), fault);
        Key key = new Key(f, k, x);
        boolean known = f >= 0 && turns.containsKey(key);
        Curves own = known ? curves.computeIfAbsent(key, c -> mixed(c, shop, FAMILY_WORTH)) : shop;
        int sets = known ? own.sets : 0;
        double gain = values.saved(f) - values.stripped(f);
        double parts = spent > 0 ? 0 : own.parts;
        StopRule.Stop middle =
                best(SuccessCurve.mix(own.censored, 0.5, own.failures), spent, gain, costOfMinute, parts);
        StopRule.Stop a = best(own.failures, spent, gain, costOfMinute, parts);
        StopRule.Stop b = best(own.censored, spent, gain, costOfMinute, parts);
        double low = Math.min(middle.minute(), Math.min(a.minute(), b.minute()));
        double high = Math.max(middle.minute(), Math.max(a.minute(), b.minute()));
        return new Stop(
                (int) Math.round(middle.minute()),
                (int) Math.round(low),
                (int) Math.round(high),
                middle.gain(),
                middle.chance(),
                middle.minutes(),
                gain,
                sets,
                shop.sets - sets);
    }

    /** Parts are paid for at the start: not worth beginning where they cost more than the rest gains. */
    private static StopRule.Stop best(
            SuccessCurve curve, double spent, double gain, double costOfMinute, double parts) {
        StopRule rule = StopRule.of(curve.minute, curve.chance, new double[curve.minute.length]);
        StopRule.Stop stop = rule.after(spent, gain, costOfMinute);
        return stop.gain() <= parts
                ? new StopRule.Stop(spent, 0, 0, 0)
                : new StopRule.Stop(stop.minute(), stop.gain() - parts, stop.chance(), stop.minutes());
    }

    private Curves nothing(String fault) {
        Assumed.AtBench a = Assumed.fault(fault);
        SuccessCurve assumed = SuccessCurve.assumed(a.saved(), a.minutes());
        return new Curves(assumed, assumed, 0, a.partsHours() * perMinute * 60);
    }

    private Curves pooled(Key key, String fault) {
        return curves.computeIfAbsent(key, k -> mixed(k, nothing(fault), ASSUMED_WORTH));
    }

    private Curves mixed(Key key, Curves parent, double worth) {
        List<Turns.Turn> own = turns.getOrDefault(key, List.of());
        if (own.isEmpty()) {
            return parent;
        }
        int n = own.size();
        double weight = n / (n + worth);
        double parts = 0;
        for (Turns.Turn t : own) {
            parts += t.parts();
        }
        return new Curves(
                SuccessCurve.mix(SuccessCurve.ofCensored(own), weight, parent.censored),
                SuccessCurve.mix(SuccessCurve.ofFailures(own), weight, parent.failures),
                n,
                (parts + worth * parent.parts) / (n + worth));
    }
}
