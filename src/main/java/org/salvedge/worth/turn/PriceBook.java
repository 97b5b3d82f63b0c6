package org.salvedge.worth.turn;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.Assumed;
import org.salvedge.worth.Route;

/**
 * What a saved set of a family brings, and what a stripped one does, net of fees, shipping, packing and comebacks. The mean log
 * price of a family, recent sales weighing more (half as much every {@value #HALF_LIFE} days), is drawn towards a line over the
 * log of the diagonal with the weight of {@value #FAMILY_WEIGHT} sales.
 */
final class PriceBook implements java.io.Serializable {
    private static final double HALF_LIFE = 240;
    private static final double FAMILY_WEIGHT = 3;
    private static final double STRIP_WEIGHT = 8;
    private static final double LINE_WEIGHT = 3;
    private static final double USUAL_SLOPE = 1.5;
    private static final double USUAL_INCHES = 50;
    private static final int FEW_AS_IS = 5;

    private final double level;
    private final double slope;
    private final double noise;
    private final Map<String, double[]> own = new HashMap<>();
    private final Map<String, double[]> strips = new HashMap<>();
    private final double costShare;
    private final double packing;
    private final double comebackShare;
    private final double stripShare;
    private final double hourly;
    /** Sets sold as they are, with whole glass (0) and with broken (1): how many, and their net over the price as shares. */
    private final double[][] asIs = new double[2][2];

    PriceBook(BenchRecord record, int today, double hourly) {
        this.hourly = hourly;
        List<BenchRecord.Sale> sales = record.sales();
        double w0 = LINE_WEIGHT;
        double sx = 0;
        double sy = LINE_WEIGHT * Math.log(Assumed.PRICE_HOURS * Math.max(hourly, 0.01));
        double sxx = LINE_WEIGHT * 0.1;
        double sxy = LINE_WEIGHT * 0.1 * USUAL_SLOPE;
        for (BenchRecord.Sale s : sales) {
            double w = weight(s.day(), today);
            double x = size(s.inches());
            double y = Math.log(s.gross());
            w0 += w;
            sx += w * x;
            sy += w * y;
            sxx += w * x * x;
            sxy += w * x * y;
        }
        slope = (w0 * sxy - sx * sy) / (w0 * sxx - sx * sx);
        level = (sy - slope * sx) / w0;
        double gross = 1;
        double costs = Assumed.FEES + 0.1;
        double minutes = 3 * Assumed.PACKING_MINUTES;
        for (BenchRecord.Sale s : sales) {
            double w = weight(s.day(), today);
            double[] sum = own.computeIfAbsent(s.family(), f -> new double[2]);
            sum[0] += w;
            sum[1] += w * (Math.log(s.gross()) - line(s.inches()));
            gross += s.gross();
            costs += s.costs();
            minutes += s.minutes();
        }
        costShare = costs / gross;
        packing = minutes / (sales.size() + 3);
        comebackShare = (record.comebackCost() + 0.02 * 5 * gross / (sales.size() + 1))
                / (gross + 5 * gross / (sales.size() + 1));
        double squares = 3 * 0.04;
        for (BenchRecord.Sale s : sales) {
            squares += Math.pow(Math.log(s.gross()) - logPrice(s.family(), s.inches()), 2);
        }
        noise = squares / (sales.size() + 3);
        double share = STRIP_WEIGHT * (Assumed.STRIP_SHARE - Assumed.STRIPPING_MINUTES / 60 / Assumed.PRICE_HOURS);
        for (BenchRecord.Sale s : record.stripped()) {
            double[] sum = strips.computeIfAbsent(s.family(), f -> new double[2]);
            double net = (s.gross() - s.costs() - s.minutes() * hourly / 60) / price(s.family(), s.inches());
            sum[0]++;
            sum[1] += net;
            share += net;
        }
        stripShare = share / (record.stripped().size() + STRIP_WEIGHT);
        int broken = record.faults().indexOf(CommonPractice.BROKEN);
        for (BenchRecord.AsIs one : record.soldAsTheyAre()) {
            BenchRecord.Sale s = one.sale();
            double[] sum = asIs[one.fault() == broken ? 1 : 0];
            sum[0]++;
            sum[1] += (s.gross() - s.costs() - s.minutes() * hourly / 60) / price(s.family(), s.inches());
        }
    }

    private static double weight(int day, int today) {
        return Math.pow(0.5, Math.max(0, today - day) / HALF_LIFE);
    }

    /** Diagonals that are not known count as usual ones. */
    private static double size(double inches) {
        return inches > 0 ? Math.log(inches / USUAL_INCHES) : 0;
    }

    private double line(double inches) {
        return level + slope * size(inches);
    }

    private double logPrice(String family, double inches) {
        double @Nullable [] sum = own.get(family);
        return line(inches) + (sum == null ? 0 : sum[1] / (sum[0] + FAMILY_WEIGHT));
    }

    /** Expected gross of a set that passed, in units of the currency. */
    double price(String family, double inches) {
        return Math.exp(logPrice(family, inches) + noise / 2);
    }

    /** Net of a set that passed. */
    double saved(String family, double inches) {
        return price(family, inches) * (1 - costShare - comebackShare) - packing * hourly / 60;
    }

    /** What a saved set brings more than a stripped one, with the price so many standard errors off. */
    double saving(String family, double inches, double score) {
        double @Nullable [] sum = own.get(family);
        double error = Math.sqrt(noise / ((sum == null ? 0 : sum[0]) + FAMILY_WEIGHT));
        double off = price(family, inches) * Math.expm1(score * error);
        double strip = stripped(family, inches);
        double kept = 1 - costShare - comebackShare - Math.max(0, strip) / price(family, inches);
        return saved(family, inches) - strip + off * kept;
    }

    /** What brings most of a set that is not fixed: stripping, recycling, or a sale as it is where the shop has made a few. */
    Route otherwise(String family, double inches, boolean broken) {
        double strip = stripped(family, inches);
        double[] sum = asIs[broken ? 1 : 0];
        double sale = sum[0] == 0 ? 0 : sum[1] / sum[0] * price(family, inches);
        if (sum[0] >= FEW_AS_IS && sale > strip) {
            return Route.SELL_AS_IS;
        }
        return strip <= -Assumed.RECYCLING_HOURS * hourly ? Route.RECYCLE : Route.STRIP;
    }

    /** Net of a stripped set; not less than what recycling costs. */
    double stripped(String family, double inches) {
        double @Nullable [] sum = strips.get(family);
        double share = sum == null ? stripShare : (sum[1] + STRIP_WEIGHT * stripShare) / (sum[0] + STRIP_WEIGHT);
        return Math.max(share * price(family, inches), -Assumed.RECYCLING_HOURS * hourly);
    }
}
