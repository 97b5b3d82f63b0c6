package org.salvedge.worth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;
import org.salvedge.shop.Timeline;

/**
 * What the shop's record says of lots to come. Fitted once from a history as of a day, then asked about any number of lots.
 * Immutable; may be asked by several threads.
 */
public final class ShopModel {
    private final History history;
    private final double mean;
    private final double sd;
    private final double lotSd;
    private final double minutes;
    private final double saved;
    private final int finished;

    private ShopModel(
            History history, double mean, double sd, double lotSd, double minutes, double saved, int finished) {
        this.history = history;
        this.mean = mean;
        this.sd = sd;
        this.lotSd = lotSd;
        this.minutes = minutes;
        this.saved = saved;
        this.finished = finished;
    }

    /**
     * @param history the record as it stood at the end of {@code asOf}; unfinished lots included
     * @param asOf nothing in the history is later
     * @param settings for the labour rate and the model families
     */
    public static ShopModel fit(History history, LocalDate asOf, Settings settings) {
        double minor = Math.pow(10, Math.max(0, history.currency().getDefaultFractionDigits()));
        double perMinute = settings.labourRate().doubleValue() / 60;
        Timeline timeline = new Timeline();
        int n = 0;
        double sum = 0;
        double squares = 0;
        double allMinutes = 0;
        int saved = 0;
        double[] lotSum = new double[history.lots()];
        int[] lotSets = new int[history.lots()];
        for (int s = 0; s < history.sets(); s++) {
            history.walk(s, timeline);
            if (!timeline.decided() || timeline.state() != Timeline.State.GONE) {
                continue;
            }
            double net = 0;
            double spent = 0;
            for (int a = history.attemptStart(s); a < history.attemptStart(s + 1); a++) {
                net -= history.attemptParts(a) / minor;
                spent += Math.max(0, history.attemptDiagnosisMicros(a)) / 1e6;
                spent += Math.max(0, history.attemptFixMicros(a)) / 1e6;
            }
            for (int e = history.exitStart(s); e < history.exitStart(s + 1); e++) {
                net += (history.exitGross(e) - history.exitCosts(e)) / minor;
                spent += Math.max(0, history.exitMicros(e)) / 1e6;
            }
            for (int c = history.comebackStart(s); c < history.comebackStart(s + 1); c++) {
                net -= history.comebackCost(c) / minor;
            }
            net -= spent * perMinute;
            n++;
            sum += net;
            squares += net * net;
            allMinutes += spent;
            lotSum[history.setLot(s)] += net;
            lotSets[history.setLot(s)]++;
            if (timeline.saved() && timeline.lastExitKind() == ExitKind.SOLD) {
                saved++;
            }
        }
        double mean = n == 0 ? 0 : sum / n;
        double sd = n < 2 ? 50 : Math.sqrt(Math.max(0, squares / n - mean * mean));
        double between = 0;
        int lots = 0;
        for (int l = 0; l < lotSum.length; l++) {
            if (lotSets[l] >= 10) {
                double d = lotSum[l] / lotSets[l] - mean;
                between += d * d - sd * sd / lotSets[l];
                lots++;
            }
        }
        double lotSd = lots < 2 ? sd / 2 : Math.sqrt(Math.max(0, between / lots));
        return new ShopModel(
                history, mean, sd, lotSd, n == 0 ? 40 : allMinutes / n, n == 0 ? 0.5 : saved / (double) n, n);
    }

    /** The predictive distribution for a lot. */
    public LotWorth predict(Question question) {
        int sets = question.sets().size();
        double[] recovery = new double[question.draws()];
        double[] spent = new double[question.draws()];
        SplittableRandom random = new SplittableRandom(question.seed());
        for (int d = 0; d < recovery.length; d++) {
            double lot = mean + lotSd * random.nextGaussian();
            recovery[d] = sets * lot + Math.sqrt(sets) * sd * random.nextGaussian();
            spent[d] = sets * minutes;
        }
        Predictive outcome = new Predictive(recovery);
        List<LineWorth> lines = new ArrayList<>();
        for (Candidate c : question.sets()) {
            lines.add(new LineWorth(
                    c.sheet(),
                    c.line(),
                    1,
                    c.model() == null ? "" : c.model(),
                    "",
                    c.claimed().code(),
                    outcome.mean() / sets,
                    sd,
                    saved,
                    minutes,
                    Route.FIX,
                    finished + " finished sets of any kind"));
        }
        return new LotWorth(
                sets,
                history.lots(),
                history.sets(),
                outcome,
                new Predictive(spent),
                lines,
                List.copyOf(Arrays.asList("first estimate: the average of finished sets")));
    }
}
