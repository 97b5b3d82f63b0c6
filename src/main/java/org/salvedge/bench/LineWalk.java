package org.salvedge.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;

/**
 * From what is seen on the screen to the likely fault and the next cheapest test. The facts are common practice, no source: row
 * signals are fed to both short sides of most large panels, the picture from one long edge; driving one half costs minutes and
 * no part, so that it comes before any board is ordered.
 */
public final class LineWalk {
    private LineWalk() {}

    public enum Direction implements Coded {
        HORIZONTAL,
        VERTICAL,
        WHOLE_SCREEN;

        @Override
        public String code() {
            return Coded.lowerCase(this);
        }
    }

    public enum Extent implements Coded {
        ONE_LINE,
        BAND,
        NOT_SAID;

        @Override
        public String code() {
            return Coded.lowerCase(this);
        }
    }

    /** Where the fault stays when one half of the screen is driven at a time. */
    public enum HalfDriven implements Coded {
        LEFT,
        RIGHT,
        BOTH,
        NOT_TRIED;

        @Override
        public String code() {
            return Coded.lowerCase(this);
        }
    }

    public enum UnderPressure implements Coded {
        CHANGES,
        STAYS,
        NOT_TRIED;

        @Override
        public String code() {
            return Coded.lowerCase(this);
        }
    }

    public record Seen(Direction direction, Extent extent, HalfDriven half, UnderPressure pressure) {}

    /**
     * @param fault the likely class
     * @param fix what to try, once the tests are done; null while a test comes first
     * @param why one sentence
     * @param tests what to do next, cheapest first
     */
    public record Advice(Fault fault, @Nullable Fix fix, String why, List<String> tests) {
        public Advice {
            tests = List.copyOf(tests);
        }
    }

    public static Advice of(Seen seen) {
        return switch (seen.direction()) {
            case WHOLE_SCREEN ->
                new Advice(
                        Fault.TIMING_BOARD,
                        Fix.TIMING_BOARD_SWAP,
                        "Blocks, wrong colours, or a picture mirrored or doubled on the whole screen point to the timing board or its supply, before the panel.",
                        List.of("measure the timing board's supply", "reseat the cable to the timing board"));
            case VERTICAL -> vertical(seen);
            case HORIZONTAL -> horizontal(seen);
        };
    }

    private static Advice vertical(Seen seen) {
        if (seen.pressure() == UnderPressure.CHANGES) {
            return new Advice(
                    Fault.COLUMN_DRIVE,
                    Fix.REBOND_FILM,
                    "Vertical lines are the column side; lines that change when the ribbon is pressed are a bond or a contact.",
                    List.of("reseat the ribbon, then rebond the film"));
        }
        if (seen.extent() == Extent.ONE_LINE && seen.pressure() == UnderPressure.STAYS) {
            return new Advice(
                    Fault.COLUMN_DRIVE,
                    null,
                    "A line one pixel wide that never changes is bond or glass: poor prospects.",
                    List.of("strip it, or sell it as it is with the line shown"));
        }
        return new Advice(
                Fault.COLUMN_DRIVE,
                null,
                "Vertical lines point to the column side: the picture data of each column.",
                List.of(
                        "press along the ribbon of the column drivers and watch the line",
                        "reseat the ribbons at the timing board"));
    }

    private static Advice horizontal(Seen seen) {
        List<String> tests = new ArrayList<>();
        if (seen.pressure() == UnderPressure.CHANGES) {
            return new Advice(
                    Fault.ROW_DRIVE,
                    Fix.RESEAT_CABLE,
                    "Horizontal lines are the row side; lines that change when the ribbon is pressed want reseating or rebonding first.",
                    List.of("reseat the ribbon on that side", "rebond the film there"));
        }
        if (seen.half() == HalfDriven.NOT_TRIED) {
            tests.add("drive one half at a time: unplug one ribbon and look on which side the lines stay");
        }
        if (seen.pressure() == UnderPressure.NOT_TRIED) {
            tests.add("press the ribbon and watch the lines");
        }
        if (seen.extent() == Extent.ONE_LINE && seen.pressure() == UnderPressure.STAYS) {
            return new Advice(
                    Fault.ROW_DRIVE,
                    null,
                    "A line one pixel wide that never changes is bond or glass: poor prospects.",
                    List.of("strip it, or sell it as it is with the line shown"));
        }
        if (seen.half() == HalfDriven.BOTH) {
            return new Advice(
                    Fault.TIMING_BOARD,
                    null,
                    "Lines that stay whichever half is driven come from what both sides share: the timing board's row signals or the panel.",
                    List.of(
                            "measure the row signals at the timing board's test points",
                            "try a known good timing board"));
        }
        if (!tests.isEmpty()) {
            return new Advice(
                    Fault.ROW_DRIVE,
                    null,
                    "Horizontal lines or bands point to the row side: which row is switched on.",
                    tests);
        }
        String side = seen.half() == HalfDriven.LEFT ? "left" : "right";
        return new Advice(
                Fault.ROW_DRIVE,
                Fix.CONTACT_MASK,
                "The lines stay on the " + side
                        + ": its row driver is the culprit, and the other side can carry the rows alone.",
                List.of(
                        "find the row-signal contacts of the " + side
                                + " ribbon: names on the board, else continuity from the other side's test points",
                        "insulate them as `mask plan` says"));
    }
}
