package org.salvedge.worth;

import static java.util.Map.entry;

import java.util.Map;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;

/**
 * What is taken for granted where the record is silent: orders of magnitude of bench practice, wide on purpose, without a
 * published source. A shop's own record soon outweighs each. Money is counted in hours of the shop's labour, so that the same
 * figures serve any currency.
 */
public final class Assumed {
    private Assumed() {}

    /** A fault at the bench: share of sets that have it, chance to save one, its standard deviation on the logit scale, minutes, parts. */
    public record AtBench(double share, double saved, double savedLogitSd, double minutes, double partsHours) {}

    static final AtBench OTHER_FAULT = new AtBench(0.02, 0.4, 1.0, 40, 0.4);

    private static final Map<String, AtBench> FAULTS = Map.ofEntries(
            of(Fault.ROW_DRIVE, 0.16, 0.50, 0.6, 45, 0.02),
            of(Fault.COLUMN_DRIVE, 0.09, 0.12, 0.7, 60, 0.2),
            of(Fault.TIMING_BOARD, 0.08, 0.66, 0.6, 35, 1.0),
            of(Fault.BACKLIGHT, 0.18, 0.74, 0.6, 90, 1.2),
            of(Fault.POWER_BOARD, 0.12, 0.74, 0.6, 40, 0.7),
            of(Fault.MAIN_BOARD, 0.09, 0.66, 0.6, 35, 1.5),
            of(Fault.FIRMWARE, 0.05, 0.66, 0.6, 25, 0),
            of(Fault.PANEL_BROKEN, 0.12, 0.01, 1.0, 5, 0),
            of(Fault.PORTS_AUDIO, 0.04, 0.66, 0.8, 35, 0.3),
            of(Fault.NONE_FOUND, 0.06, 0.93, 0.7, 20, 0),
            of(Fault.UNKNOWN, 0.03, 0.15, 1.0, 30, 0));

    private static Map.Entry<String, AtBench> of(
            Fault fault, double share, double saved, double sd, double minutes, double parts) {
        return entry(fault.code(), new AtBench(share, saved, sd, minutes, parts));
    }

    public static AtBench fault(String code) {
        return FAULTS.getOrDefault(code, OTHER_FAULT);
    }

    /** Of the sets whose glass is whole: what a claim points to, and how much of it is left to the usual mix. */
    private static final Map<String, Map<String, Double>> POINTS_TO = Map.ofEntries(
            entry(Claim.HORIZONTAL_LINES.code(), Map.of("row_drive", 0.6, "timing_board", 0.1, "column_drive", 0.08)),
            entry(Claim.VERTICAL_LINES.code(), Map.of("column_drive", 0.6, "timing_board", 0.12)),
            entry(Claim.HALF_SCREEN.code(), Map.of("timing_board", 0.35, "row_drive", 0.2, "column_drive", 0.2)),
            entry(Claim.NO_PICTURE.code(), Map.of("backlight", 0.6, "timing_board", 0.1, "power_board", 0.1)),
            entry(Claim.DEAD.code(), Map.of("power_board", 0.6, "main_board", 0.15)),
            entry(Claim.DIM_PATCHY.code(), Map.of("backlight", 0.75)),
            entry(Claim.BOOT_LOOP.code(), Map.of("main_board", 0.4, "firmware", 0.35)),
            entry(Claim.NO_SOUND.code(), Map.of("ports_audio", 0.6, "main_board", 0.15)),
            entry(Claim.CUSTOMER_RETURN.code(), Map.of("none_found", 0.3)),
            entry(Claim.WORKING.code(), Map.of("none_found", 0.6)));

    /** Share of a fault among sets with this claim whose glass is whole, where the usual share among all such sets is given. */
    public static double share(String claim, String fault, double usual) {
        Map<String, Double> points = POINTS_TO.getOrDefault(claim, Map.of());
        double told = points.values().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .sum(); // a map of this kind has no order
        return points.getOrDefault(fault, 0.0) + (1 - told) * usual;
    }

    /** Log odds of broken glass for a claim beyond those of the average set. */
    public static double brokenLogit(String claim) {
        if (claim.equals(Claim.CRACKED.code())) {
            return 3.5;
        }
        if (claim.equals(Claim.UNTESTED.code())) {
            return 0.5;
        }
        return claim.equals(Claim.WORKING.code()) ? -0.7 : 0;
    }

    public static final double BROKEN_LOGIT = Math.log(0.12 / 0.88);

    /** Hours of labour that a working set of 50 inches sells for. */
    public static final double PRICE_HOURS = 7;

    /** Of a working set's price, what its parts bring. */
    public static final double STRIP_SHARE = 0.22;

    /** Fees of a sale, as a share of its price. */
    public static final double FEES = 0.12;

    /** Hours of labour that sending a 50-inch set costs. */
    public static final double SHIPPING_HOURS = 0.9;

    /** Hours of labour that recycling a set costs. */
    public static final double RECYCLING_HOURS = 0.15;

    public static final double PACKING_MINUTES = 15;
    public static final double STRIPPING_MINUTES = 15;
    public static final double RECYCLING_MINUTES = 3;
    /** What taking a board out with care and testing it costs beyond stripping. */
    public static final double TAKING_OUT_MINUTES = 5;

    public static final double UNLOADING_MINUTES = 1.5;
    public static final double COMEBACK_SHARE = 0.05;
    public static final double COMEBACK_LOSS = 0.6;
    public static final double MISSING_SHARE = 0.015;
    public static final double DAYS_TO_SALE = 60;
}
