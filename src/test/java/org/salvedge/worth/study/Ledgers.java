package org.salvedge.worth.study;

import java.math.BigDecimal;
import org.salvedge.shop.History;

/** Net recovery counted from a history's rows, as the accounts do it. */
final class Ledgers {
    private static final double MICROS_AN_HOUR = 60e6;

    private Ledgers() {}

    /** A set's takings less parts, refunds and labour so far, in whole currency units; labour half up to the cent. */
    static double net(History h, int set, BigDecimal labourRate) {
        long cents = 0;
        long micros = 0;
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            cents += h.exitGross(e) - h.exitCosts(e);
            micros += Math.max(0, h.exitMicros(e));
        }
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            cents -= h.attemptParts(a);
            micros += Math.max(0, h.attemptDiagnosisMicros(a)) + Math.max(0, h.attemptFixMicros(a));
        }
        for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
            cents -= h.comebackCost(c);
        }
        return (cents - labour(micros, labourRate)) / 100.0;
    }

    /** The lot's own minutes as labour, whole currency units. */
    static double lotLabour(History h, int lot, BigDecimal labourRate) {
        return labour(Math.max(0, h.lotMicros(lot)), labourRate) / 100.0;
    }

    private static long labour(long micros, BigDecimal labourRate) {
        return (long) Math.floor(micros * labourRate.doubleValue() * 100 / MICROS_AN_HOUR + 0.5);
    }
}
