package org.salvedge.worth;

import java.util.SplittableRandom;
import org.salvedge.shop.ExitKind;

/**
 * What stands between a price and the money kept: fees and shipping, comebacks, the wait for a buyer, stripping that brings
 * nothing, credits, sets that never came, and the labour of the lot as a whole.
 */
final class Takings implements java.io.Serializable {
    private static final double WORTH = 5;
    private static final int MATURE_DAYS = 90;

    /** Costs of a sale: share of the price, and an amount a square of the size factor. */
    final double saleFee;

    /** Costs of the sale of a set as it is, as a share of its price. */
    final double asIsCosts;

    private final double saleFixed;
    private final double salePerSize;
    /** Variance of the costs of one sale about their mean. */
    final double saleVariance;

    private final double[] saleFamily;
    final double stripFee;
    /** Chance that stripping brings anything. */
    final double stripPays;

    final double recyclingNet;
    /** Days from purchase to sale, at evenly spaced chances. */
    final double[] wait;

    final double asideShare;
    final double asideNet;
    final double missingNet;
    final double unloadingMinutes;
    private final double[] comeback;
    private final double comebackLoss;
    private final double comebackSquare;
    /** Standard error of what comebacks cost, over itself. */
    private double comebackError;

    /** Share of listed sets that never come. */
    final double missingUsual;

    Takings(Records r, double hourly) {
        double[] sale = saleCosts(r, hourly);
        saleFixed = sale[0];
        salePerSize = sale[1];
        saleFee = sale[2];
        saleFamily = new double[r.history.families().size()];
        saleVariance = familyCosts(r, hourly);
        double stripped = WORTH;
        double paying = WORTH * 0.95;
        double gross = 1;
        double costs = 0.08;
        double asIsGross = WORTH * Assumed.PRICE_HOURS * hourly + 1e-9;
        double asIsSpent = Assumed.FEES * asIsGross;
        double recycled = WORTH;
        double recyclingSum = -WORTH * Assumed.RECYCLING_HOURS * hourly;
        double aside = 0.2;
        double asideSum = 0;
        double arrived = 40;
        double missingSum = 0;
        double missingCount = WORTH;
        int suppliers = r.history.suppliers().size();
        double[] missing = new double[suppliers];
        double[] listed = new double[suppliers];
        Stays stays = r.stays;
        for (int s = 0; s < r.fault.length; s++) {
            byte result = stays.result[s];
            double net = stays.gross[s] - stays.costs[s] + stays.takings[s];
            if (r.history.onManifest(s)) {
                listed[r.supplier(s)]++;
                missing[r.supplier(s)] += result == Stays.MISSING ? 1 : 0;
            }
            if (result == Stays.MISSING) {
                missingCount++;
                missingSum += net;
                continue;
            }
            arrived++;
            if (result == Stays.ASIDE) {
                aside++;
                asideSum += net;
            } else if (stays.exit[s] == ExitKind.STRIPPED.ordinal()) {
                stripped++;
                paying += stays.gross[s] > 0 ? 1 : 0;
                gross += stays.gross[s];
                costs += stays.costs[s];
            } else if (stays.sold(s) && result != Stays.SAVED) {
                asIsGross += stays.gross[s];
                asIsSpent += stays.costs[s];
            } else if (stays.exit[s] == ExitKind.RECYCLED.ordinal()) {
                recycled++;
                recyclingSum += net;
            }
        }
        stripFee = costs / gross;
        asIsCosts = asIsSpent / asIsGross;
        stripPays = paying / stripped;
        recyclingNet = recyclingSum / recycled;
        asideShare = aside / arrived;
        asideNet = asideSum / aside;
        missingNet = missingSum / missingCount;
        double all = 0;
        double gone = 0;
        for (int i = 0; i < suppliers; i++) {
            all += listed[i];
            gone += missing[i];
        }
        missingUsual = (gone + 100 * Assumed.MISSING_SHARE) / (all + 100);
        unloadingMinutes = unloading(r);
        wait = SaleWaits.of(r);
        comeback = new double[r.codes.faults.size()];
        double[] losses = comebacks(r);
        comebackLoss = losses[0];
        comebackSquare = losses[1];
    }

    /** Least squares of the costs on 1, the size factor and the price, with a weak pull to what is assumed. */
    private static double[] saleCosts(Records r, double hourly) {
        double[][] a = new double[3][4];
        double[] before = {0.2 * Assumed.SHIPPING_HOURS * hourly, 0.8 * Assumed.SHIPPING_HOURS * hourly, Assumed.FEES};
        double[] worth = {2, 2, 2 * Math.pow(Assumed.PRICE_HOURS * hourly + 1, 2)};
        for (int i = 0; i < 3; i++) {
            a[i][i] = worth[i];
            a[i][3] = worth[i] * before[i];
        }
        for (int s = 0; s < r.fault.length; s++) {
            if (working(r, s)) {
                double w = Math.pow(0.5, -r.months(r.stays.exitDay[s]) / 12);
                double[] x = {1, Math.exp(r.logInches[s]), r.stays.gross[s], r.stays.costs[s]};
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 4; j++) {
                        a[i][j] += w * x[i] * x[j];
                    }
                }
            }
        }
        for (int i = 0; i < 3; i++) {
            for (int k = i + 1; k < 3; k++) {
                double f = a[k][i] / a[i][i];
                for (int j = i; j < 4; j++) {
                    a[k][j] -= f * a[i][j];
                }
            }
        }
        double[] x = new double[3];
        for (int i = 2; i >= 0; i--) {
            double sum = a[i][3];
            for (int j = i + 1; j < 3; j++) {
                sum -= a[i][j] * x[j];
            }
            x[i] = sum / a[i][i];
        }
        return x;
    }

    /** Sold in working order: the rest often goes over the counter, without fees and shipping. */
    private static boolean working(Records r, int s) {
        return r.stays.result[s] == Stays.SAVED && r.stays.sold(s) && r.stays.gross[s] > 0;
    }

    /** What the sales of a family cost beyond what its size and price let expect, shrunk; returns the variance within families. */
    private double familyCosts(Records r, double hourly) {
        double[] n = new double[saleFamily.length];
        double squares = WORTH * Math.pow(0.2 * Assumed.SHIPPING_HOURS * hourly, 2);
        double all = WORTH;
        for (int s = 0; s < r.fault.length; s++) {
            if (working(r, s)) {
                double e = r.stays.costs[s] - saleCosts(-1, r.logInches[s]) - saleFee * r.stays.gross[s];
                n[r.family(s)]++;
                saleFamily[r.family(s)] += e;
                squares += e * e;
                all++;
            }
        }
        double within = squares;
        double between = 0;
        double families = 3;
        for (int f = 0; f < n.length; f++) {
            within -= n[f] > 0 ? saleFamily[f] * saleFamily[f] / n[f] : 0;
            families += n[f] > 0 ? 1 : 0;
        }
        double variance = Math.max(squares * 0.1, within) / all;
        for (int f = 0; f < n.length; f++) {
            if (n[f] > 0) {
                between += Math.max(-variance, Math.pow(saleFamily[f] / n[f], 2) - variance / n[f]);
            }
        }
        double spread = Math.max(variance * 1e-4, between / families);
        for (int f = 0; f < n.length; f++) {
            saleFamily[f] = n[f] == 0 ? 0 : saleFamily[f] / (n[f] + variance / spread);
        }
        return variance;
    }

    /** Costs of a sale that do not follow its price. */
    double saleCosts(int family, double logInches) {
        return saleFixed + salePerSize * Math.exp(logInches) + (family < 0 ? 0 : saleFamily[family]);
    }

    private static double unloading(Records r) {
        double minutes = 0;
        double sets = 0;
        int[] size = new int[r.history.lots()];
        for (int s = 0; s < r.fault.length; s++) {
            size[r.lot(s)]++;
        }
        for (int lot = 0; lot < size.length; lot++) {
            if (r.history.lotMicros(lot) >= 0) {
                minutes += r.history.lotMicros(lot) / 1e6;
                sets += size[lot];
            }
        }
        return (minutes + 30 * Assumed.UNLOADING_MINUTES) / (sets + 30);
    }

    /** Chance of a comeback by fault, and of the loss of one, as a share of the price, the mean and the mean square. */
    private double[] comebacks(Records r) {
        double[] sales = new double[comeback.length];
        double[] back = new double[comeback.length];
        double allSales = 60;
        double allBack = 60 * Assumed.COMEBACK_SHARE;
        double loss = 3 * Assumed.COMEBACK_LOSS;
        double price = 3;
        double typical = 0;
        double count = 0;
        double squares = 5 * 0.6;
        double ended = 5;
        for (int s = 0; s < r.fault.length; s++) {
            if (r.stays.result[s] == Stays.SAVED && r.stays.sold(s)) {
                typical += r.stays.gross[s];
                count++;
            }
        }
        typical = count == 0 ? 1 : typical / count;
        loss *= typical;
        price *= typical;
        for (int s = 0; s < r.fault.length; s++) {
            if (r.stays.result[s] != Stays.SAVED || !r.stays.sold(s)) {
                continue;
            }
            int k = r.fault[s] < 0 ? r.codes.unseen : r.fault[s];
            boolean came = r.stays.comebackDay[s] != 0;
            double exposed = came ? 1 : Math.min(1, (r.asOf - r.stays.exitDay[s]) / (double) MATURE_DAYS);
            sales[k] += exposed;
            back[k] += came ? 1 : 0;
            allSales += exposed;
            allBack += came ? 1 : 0;
            if (came && !r.stays.backHere[s] && r.stays.gross[s] > 0) {
                loss -= r.stays.afterwards[s];
                price += r.stays.gross[s];
                double share = r.stays.afterwards[s] / r.stays.gross[s];
                squares += Math.min(4, share * share);
                ended++;
            }
        }
        comebackError = Math.sqrt(1.3 / allBack);
        double usual = allBack / allSales;
        for (int k = 0; k < comeback.length; k++) {
            comeback[k] = (back[k] + 30 * usual) / (sales[k] + 30);
        }
        return new double[] {loss / price, squares / ended};
    }

    /** Of the price of a saved set with this fault, the share that comebacks are expected to cost. */
    double comebackShare(int k) {
        return comeback[k] * comebackLoss;
    }

    /** Variance of that share for one set. */
    double comebackVariance(int k) {
        double mean = comebackShare(k);
        return Math.max(0, comeback[k] * comebackSquare - mean * mean);
    }

    /** Factor on what comebacks cost, drawn from what is known of it. */
    double drawComebacks(SplittableRandom random) {
        return Math.max(0, 1 + comebackError * random.nextGaussian());
    }

    double comebackRate(int k) {
        return comeback[k];
    }
}
