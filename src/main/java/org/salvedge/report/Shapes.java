package org.salvedge.report;

/** Small shapes in text: a bar, a row of bars. Each has a form in ASCII. */
public final class Shapes {
    private static final String EIGHTHS = " \u258f\u258e\u258d\u258c\u258b\u258a\u2589\u2588";
    private static final String HEIGHTS = "\u2581\u2582\u2583\u2584\u2585\u2586\u2587\u2588";
    private static final String ASCII_HEIGHTS = "_.-=+*#@";
    private static final int STEPS = 8;

    private Shapes() {}

    /** A bar of a share from 0 to 1, at most so many cells long; empty where the share is not a number. */
    public static String bar(double share, int cells, Screen screen) {
        if (Double.isNaN(share)) {
            return "";
        }
        double length = Math.max(0, Math.min(1, share)) * cells;
        if (!screen.unicode()) {
            return "#".repeat((int) Math.round(length));
        }
        int eighths = (int) Math.round(length * STEPS);
        String rest = eighths % STEPS == 0 ? "" : EIGHTHS.substring(eighths % STEPS, eighths % STEPS + 1);
        return "\u2588".repeat(eighths / STEPS) + rest;
    }

    /** One character a value, from the least (lowest bar) to the greatest; a space where it is not a number. */
    public static String spark(double[] values, Screen screen) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                low = Math.min(low, v);
                high = Math.max(high, v);
            }
        }
        String heights = screen.unicode() ? HEIGHTS : ASCII_HEIGHTS;
        StringBuilder out = new StringBuilder();
        for (double v : values) {
            if (Double.isNaN(v)) {
                out.append(' ');
            } else {
                double share = high > low ? (v - low) / (high - low) : 0.5;
                out.append(heights.charAt((int) Math.min(STEPS - 1.0, share * STEPS)));
            }
        }
        return out.toString();
    }
}
