package org.salvedge.worth.study;

import org.jspecify.annotations.Nullable;

/**
 * One way to mend one fault.
 *
 * @param solved chance that it can work on an ordinary set
 * @param median minutes to success where it can work
 * @param shape of the Weibull law of those minutes
 * @param ordered chance that the part has to be ordered first
 * @param comeback chance that a set so mended comes back
 * @param gradeA share of passed sets without a trace; of the others two in three are B
 */
record Repair(
        int fix,
        double solved,
        double median,
        double shape,
        double partsLow,
        double partsHigh,
        double ordered,
        double comeback,
        double gradeA) {
    private static final Repair RESEAT = repair("reseat_cable", 0.15, 8, 1.4, 0, 0, 0, 0.10, 0.6);
    private static final Repair MASK = repair("contact_mask", 0.57, 47, 1.5, 0, 2, 0, 0.075, 0.18);
    private static final Repair REBOND = repair("rebond_film", 0.16, 52, 1.8, 0, 15, 0.1, 0.12, 0.3);
    private static final Repair TIMING = repair("timing_board_swap", 0.72, 35, 1.7, 15, 40, 0.6, 0.04, 0.6);
    private static final Repair STRIPS = repair("led_strips", 0.82, 86, 2.6, 15, 42, 0.5, 0.055, 0.5);
    private static final Repair DRIVER = repair("led_driver", 0.35, 34, 1.5, 6, 18, 0.3, 0.05, 0.5);
    private static final Repair POWER = repair("power_board_repair", 0.80, 41, 1.3, 4, 32, 0.35, 0.05, 0.65);
    private static final Repair MAIN = repair("main_board_swap", 0.72, 36, 1.6, 18, 52, 0.7, 0.04, 0.65);
    private static final Repair REFLASH = repair("reflash", 0.68, 22, 1.2, 0, 0, 0, 0.06, 0.65);
    private static final Repair REFLASH_LATE = repair("reflash", 0.22, 20, 1.2, 0, 0, 0, 0.06, 0.65);
    private static final Repair MAIN_LATE = repair("main_board_swap", 0.45, 32, 1.6, 18, 52, 0.7, 0.04, 0.65);
    private static final Repair PORT = repair("port_repair", 0.78, 27, 1.4, 2, 10, 0.2, 0.04, 0.7);

    private static Repair repair(
            String fix,
            double solved,
            double median,
            double shape,
            double partsLow,
            double partsHigh,
            double ordered,
            double comeback,
            double gradeA) {
        return new Repair(
                Words.FIXES.indexOf(fix), solved, median, shape, partsLow, partsHigh, ordered, comeback, gradeA);
    }

    /** What the bench tries on that fault; null: nothing. */
    static @Nullable Repair first(int fault, Dice dice) {
        if (fault == Words.ROW) {
            return dice.chance(0.22) ? RESEAT : MASK;
        }
        if (fault == Words.COLUMN) {
            return dice.chance(0.35) ? REBOND : null;
        }
        if (fault == Words.TIMING) {
            return TIMING;
        }
        if (fault == Words.LIGHT) {
            return dice.chance(0.1) ? DRIVER : STRIPS;
        }
        if (fault == Words.POWER) {
            return POWER;
        }
        if (fault == Words.MAIN) {
            return dice.chance(0.15) ? REFLASH_LATE : MAIN;
        }
        if (fault == Words.FIRMWARE) {
            return REFLASH;
        }
        if (fault == Words.PORTS) {
            return PORT;
        }
        return fault == Words.UNKNOWN && dice.chance(0.4) ? RESEAT : null;
    }

    /** What it tries when that has failed; null: nothing more. */
    static @Nullable Repair second(int fault, Repair failed) {
        if (fault == Words.ROW) {
            return failed.fix() == RESEAT.fix() ? MASK : TIMING;
        }
        if (fault == Words.LIGHT) {
            return failed.fix() == STRIPS.fix() ? DRIVER : STRIPS;
        }
        if (fault == Words.MAIN) {
            return failed.fix() == MAIN.fix() ? REFLASH_LATE : MAIN;
        }
        return fault == Words.FIRMWARE ? MAIN_LATE : null;
    }
}
