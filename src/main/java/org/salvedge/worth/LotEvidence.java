package org.salvedge.worth;

import java.util.Arrays;
import org.salvedge.stats.MixedModel;

/**
 * What each lot's own sets say of its levels, respect by respect as in {@link Levels}: unshrunk, with the variance of the error, and
 * how much lots differ, by moments.
 */
final class LotEvidence {
    /** Unshrunk level of each lot, and the variance of its error: infinite where nothing is known. */
    final double[][] raw;

    final double[][] error;
    /** Variance between lots, suppliers' part included, and the degrees of freedom it rests on. */
    final double[] total = new double[Levels.COUNT];

    final double[] freedom = new double[Levels.COUNT];

    LotEvidence(
            Records r,
            MixedModel damage,
            MixedModel success,
            PriceModel sales,
            Handling handling,
            FaultMix mix,
            double usualMissing) {
        int lots = r.history.lots();
        raw = new double[lots][Levels.COUNT];
        error = new double[lots][Levels.COUNT];
        for (double[] e : error) {
            Arrays.fill(e, Double.POSITIVE_INFINITY);
        }
        MixedModel[] models = {damage, success, sales.model()};
        for (int d = 0; d < models.length; d++) {
            total[d] = models[d].groupVariance();
            freedom[d] = models[d].groupFreedom();
            for (int lot = 0; lot < lots; lot++) {
                if (models[d].precision(lot) > 0) {
                    raw[lot][d] = models[d].raw(lot);
                    error[lot][d] = 1 / models[d].precision(lot);
                }
            }
        }
        addLooks(sales.looks(r, handling), sales.looksVariance(handling, 0));
        minutes(r, handling);
        missing(r, usualMissing);
        truth(r, mix);
    }

    /** The looks that a lot's sets share are part of its price level. */
    private void addLooks(double[][] looks, double setVariance) {
        double excess = 0;
        double weight = 0;
        for (int lot = 0; lot < raw.length; lot++) {
            double n = looks[lot][1];
            if (n > 0 && error[lot][Levels.PRICE] < Double.POSITIVE_INFINITY) {
                raw[lot][Levels.PRICE] += looks[lot][0];
                error[lot][Levels.PRICE] += setVariance / n;
                double w = n / (n + 20);
                excess += w * (looks[lot][0] * looks[lot][0] - setVariance / n);
                weight += w;
            }
        }
        total[Levels.PRICE] += Math.max(0, excess) / (weight + 3);
    }

    /** Log of the bench minutes of a lot's sets over what their faults and families let expect. */
    private void minutes(Records r, Handling handling) {
        double[] spent = new double[raw.length];
        double[] due = new double[raw.length];
        double[] variance = new double[raw.length];
        for (int s = 0; s < r.fault.length; s++) {
            boolean saved = r.stays.result[s] == Stays.SAVED;
            if (r.fault[s] >= 0 && (saved || r.stays.result[s] == Stays.NOT_SAVED)) {
                int lot = r.lot(s);
                spent[lot] += r.stays.bench[s];
                due[lot] += handling.minutes(r.fault[s], r.family(s), saved);
                variance[lot] += handling.minutesVariance(r.fault[s], saved);
            }
        }
        double excess = 0;
        double weight = 0;
        for (int lot = 0; lot < raw.length; lot++) {
            if (spent[lot] > 0 && due[lot] > 0) {
                double e = variance[lot] / (due[lot] * due[lot]);
                raw[lot][Levels.MINUTES] = Math.log(spent[lot] / due[lot]);
                error[lot][Levels.MINUTES] = e;
                double w = 1 / ((0.02 + e) * (0.02 + e));
                excess += w * (raw[lot][Levels.MINUTES] * raw[lot][Levels.MINUTES] - e);
                weight += w;
            }
        }
        double prior = 4 / (0.03 * 0.03);
        total[Levels.MINUTES] = Math.max(0.001, (excess + prior * 0.015) / (weight + prior));
        freedom[Levels.MINUTES] = 4;
    }

    /** Log of a lot's share of missing sets over the usual one. */
    private void missing(Records r, double usual) {
        double[] listed = new double[raw.length];
        double[] gone = new double[raw.length];
        for (int s = 0; s < r.fault.length; s++) {
            if (r.history.onManifest(s) && r.history.lotArrival(r.lot(s)) <= r.asOf) {
                listed[r.lot(s)]++;
                gone[r.lot(s)] += r.stays.result[s] == Stays.MISSING ? 1 : 0;
            }
        }
        double excess = 0;
        double weight = 0;
        for (int lot = 0; lot < raw.length; lot++) {
            if (listed[lot] > 0) {
                double due = listed[lot] * usual;
                raw[lot][Levels.MISSING] = Math.log((gone[lot] + 0.5) / (due + 0.5));
                error[lot][Levels.MISSING] = 1 / (due + 0.5);
                excess += due * due * Math.pow(gone[lot] / due - 1, 2) - due;
                weight += due * due;
            }
        }
        total[Levels.MISSING] = Math.max(0.02, (excess + 20 * 0.2) / (weight + 20));
        freedom[Levels.MISSING] = 4;
    }

    /** The power that tilts a lot's claims, less 1: one Newton step from the average seller. */
    private void truth(Records r, FaultMix mix) {
        int lots = raw.length;
        double[] score = new double[lots];
        double[] information = new double[lots];
        int faults = mix.faults;
        double[] p = new double[faults];
        for (int s = 0; s < r.fault.length; s++) {
            int k = r.fault[s];
            if (k < 0 || k == r.codes.broken) {
                continue;
            }
            int c = r.claim[s];
            double sum = 0;
            for (int i = 0; i < faults; i++) {
                p[i] = mix.share(c, i) * mix.ratio(r.family(s), i);
                sum += p[i];
            }
            double mean = 0;
            double square = 0;
            for (int i = 0; i < faults; i++) {
                double d = mix.direction(c, i);
                mean += p[i] / sum * d;
                square += p[i] / sum * d * d;
            }
            score[r.lot(s)] += mix.direction(c, k) - mean;
            information[r.lot(s)] += Math.max(0, square - mean * mean);
        }
        double excess = 0;
        double seen = 0;
        for (int lot = 0; lot < lots; lot++) {
            if (information[lot] > 0.5) {
                raw[lot][Levels.TRUTH] = Math.max(-1.5, Math.min(1.5, score[lot] / information[lot]));
                error[lot][Levels.TRUTH] = 1 / information[lot];
                double w = 1 / (0.05 + error[lot][Levels.TRUTH]);
                excess += w * w * (raw[lot][Levels.TRUTH] * raw[lot][Levels.TRUTH] - error[lot][Levels.TRUTH]);
                seen += w * w;
            }
        }
        double prior = 10 / (0.1 * 0.1);
        total[Levels.TRUTH] = Math.max(0.002, (excess + prior * 0.03) / (seen + prior));
        freedom[Levels.TRUTH] = 4;
    }
}
