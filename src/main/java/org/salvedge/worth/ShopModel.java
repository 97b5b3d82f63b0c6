package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Names;
import org.salvedge.shop.Part;
import org.salvedge.shop.Settings;

/**
 * What the shop's record says of lots to come. Fitted once from a history as of a day, then asked about any number of lots.
 * Immutable; may be asked by several threads.
 */
public final class ShopModel implements java.io.Serializable {
    private static final double DAYS_A_MONTH = 365.25 / 12;

    /** What the parts leave out, as found on invented shops kept apart for that. */
    private static final double PRUDENCE = 1.08;

    private static final double FEW_DRAWS = 200;

    private final Parts parts;
    private final int asOf;

    private ShopModel(Parts parts, int asOf) {
        this.parts = parts;
        this.asOf = asOf;
    }

    /**
     * @param history the record as it stood at the end of {@code asOf}, with every column; unfinished lots included
     * @param asOf nothing in the history is later
     * @param settings for the labour rate and the model families
     */
    public static ShopModel fit(History history, LocalDate asOf, Settings settings) {
        return fit(history, List.of(), asOf, settings);
    }

    /** @param parts as they stood then, bought or out of donors; the history was read with its labels */
    public static ShopModel fit(History history, List<Part> parts, LocalDate asOf, Settings settings) {
        int day = (int) asOf.toEpochDay();
        return new ShopModel(
                new Parts(history, parts, day, settings.labourRate().doubleValue(), settings.families()), day);
    }

    Parts parts() {
        return parts;
    }

    /** Day that the record is read up to. */
    public LocalDate asOf() {
        return LocalDate.ofEpochDay(asOf);
    }

    /** The supplier of the record whose name differs in letters' case and outer spaces only; else the name as given. */
    public String supplierAsKnown(String name) {
        Names suppliers = parts.records.history.suppliers();
        int known = suppliers.findAlike(name);
        return known < 0 ? name.strip() : suppliers.text(known);
    }

    /** The predictive distribution for a lot. */
    public LotWorth predict(Question question) {
        return predict(question, Map.of());
    }

    /**
     * The same after some sets were looked at: draws in which such findings are likelier weigh more, since what is found tells of
     * the lot's other sets too.
     *
     * @param found fault codes by number of the set in the question, from 0
     */
    public LotWorth predict(Question question, Map<Integer, String> found) {
        Lineup lineup = new Lineup(parts, question.sets());
        Looked looked = new Looked(lineup, parts.records.codes, found);
        Simulation sim = simulate(question, lineup.strangers, looked.kinds, looked.sets, looked.found, null);
        int n = question.sets().size();
        double labour = labour(n);
        double[] draws = Reweighted.even(sim.recovery, sim.weight);
        widen(draws);
        Predictive recovery = new Predictive(draws);
        double effective = Reweighted.effective(sim.weight);
        return new LotWorth(
                n,
                parts.records.history.lots(),
                parts.records.sets,
                recovery,
                new Predictive(Reweighted.even(sim.minutes, sim.weight)),
                sim.donors,
                lines(question.sets(), looked, sim, recovery.mean(), labour / n),
                effective < FEW_DRAWS
                        ? List.of("what was found is so unlike what was expected that the answer is rough (it rests on "
                                + Math.round(effective) + " draws); more --draws make it finer")
                        : List.of());
    }

    /** Recovery of each draw, with the faults of some sets told to the probe. */
    double[] probed(Question question, Lineup lineup, Probe probe) {
        Simulation sim =
                simulate(question, lineup.strangers, lineup.kinds, lineup.sets, new int[lineup.kinds.length][0], probe);
        return sim.recovery;
    }

    private Simulation simulate(
            Question question, Strangers strangers, Kind[] kinds, int[] sets, int[][] found, @Nullable Probe probe) {
        int supplier = question.supplier() == null
                ? -1
                : parts.records.history.suppliers().find(question.supplier());
        double ahead = (question.on().toEpochDay() - asOf) / DAYS_A_MONTH;
        Simulation sim = Simulation.run(
                parts, kinds, sets, strangers, supplier, ahead, question.draws(), question.seed(), found, probe);
        int n = question.sets().size();
        double unloading = parts.takings.unloadingMinutes * n;
        double labour = labour(n);
        for (int d = 0; d < sim.recovery.length; d++) {
            sim.recovery[d] -= labour;
            sim.minutes[d] += unloading;
        }
        return sim;
    }

    /** Cost of unloading the lot. */
    private double labour(int sets) {
        return parts.takings.unloadingMinutes * sets * parts.hourly / 60;
    }

    /** Draws the outcomes away from their mean. */
    private static void widen(double[] draws) {
        double mean = 0;
        for (double d : draws) {
            mean += d / draws.length;
        }
        for (int i = 0; i < draws.length; i++) {
            draws[i] = mean + PRUDENCE * (draws[i] - mean);
        }
    }

    private List<LineWorth> lines(List<Candidate> sets, Looked lineup, Simulation sim, double mean, double labourEach) {
        Map<List<Object>, List<Integer>> byLine = new LinkedHashMap<>();
        for (int i = 0; i < sets.size(); i++) {
            Candidate c = sets.get(i);
            List<Object> key = new ArrayList<>();
            key.add(String.valueOf(c.sheet()));
            key.add(c.line() == null ? "set " + i : c.line());
            byLine.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
        }
        double sum = 0;
        for (int i = 0; i < sets.size(); i++) {
            sum += sim.perSet[lineup.kindOf[i]][0] - labourEach;
        }
        double rest = (mean - sum) / sets.size(); // luck of the draws that belongs to no set
        List<LineWorth> lines = new ArrayList<>();
        for (List<Integer> members : byLine.values()) {
            Candidate c = sets.get(members.get(0));
            double recovery = 0;
            double variance = 0;
            double saved = 0;
            double minutes = 0;
            for (int i : members) {
                double[] per = sim.perSet[lineup.kindOf[i]];
                recovery += per[0] - labourEach + rest;
                variance += Math.max(0, per[1] - per[0] * per[0]);
                saved += per[3];
                minutes += per[2];
            }
            Kind kind = lineup.kinds[lineup.kindOf[members.get(0)]];
            lines.add(new LineWorth(
                    c.sheet(),
                    c.line(),
                    members.size(),
                    c.model() == null ? "" : c.model(),
                    kind.family() < 0 ? "" : parts.records.history.families().text(kind.family()),
                    c.claimed().code(),
                    recovery,
                    Math.sqrt(variance),
                    saved / members.size(),
                    minutes,
                    Route.FIX,
                    kind.why() == null ? "" : kind.why()));
        }
        return lines;
    }
}
