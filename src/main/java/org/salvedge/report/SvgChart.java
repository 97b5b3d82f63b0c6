package org.salvedge.report;

import java.util.List;
import java.util.Locale;

/**
 * Charts as inline SVG. Series differ by shape as well as by colour: solid, hatched, outlined; lines by their dashes. Colours come from the
 * page's style.
 */
final class SvgChart {
    private static final double WIDTH = 380;
    private static final double HEIGHT = 230;
    private static final double TOP = 12;
    private static final double RIGHT = 8;
    /** Room for half of the axis' last number. */
    private static final double MARGIN_OF_BARS = 18;

    private static final double CHARACTER = 5.4;
    private static final int STEPS = 5;
    private static final List<String> LOOKS = List.of("solid", "hatched", "outlined");

    private final StringBuilder out = new StringBuilder();
    private final String title;
    private final boolean percent;
    private double left = 52;
    private double bottom = 64;
    private double right = RIGHT;
    private double low;
    private double high;

    /** @param values one a category; not a number = none */
    record Series(String name, double[] values) {
        Series {
            values = values.clone();
        }
    }

    private SvgChart(String title, boolean percent) {
        this.title = title;
        this.percent = percent;
    }

    /** The first as a line with points, the others dashed. */
    static String lines(String title, List<String> categories, List<Series> series, boolean percent) {
        SvgChart c = new SvgChart(title, percent);
        c.begin(series, categories);
        c.bottomNames(categories);
        for (int s = series.size() - 1; s >= 0; s--) {
            c.line(series.get(s).values, categories.size(), s == 0 ? "line" : s == 1 ? "line centre" : "line limit");
        }
        for (int i = 0; i < categories.size(); i++) {
            double v = series.get(0).values[i];
            if (!Double.isNaN(v)) {
                c.add("<circle class=\"point\" cx=\"%.1f\" cy=\"%.1f\" r=\"3\"/>", c.x(i, categories.size()), c.y(v));
            }
        }
        c.legend(series, true);
        return c.end();
    }

    /** Columns side by side above each category. */
    static String columns(String title, List<String> categories, List<Series> series) {
        SvgChart c = new SvgChart(title, false);
        c.begin(series, categories);
        c.bottomNames(categories);
        double slot = (WIDTH - c.left - RIGHT) / Math.max(1, categories.size());
        double width = slot * 0.8 / series.size();
        for (int s = 0; s < series.size(); s++) {
            for (int i = 0; i < categories.size(); i++) {
                double v = series.get(s).values[i];
                if (!Double.isNaN(v)) {
                    c.bar(LOOKS.get(s), c.left + slot * (i + 0.1) + width * s, width, 0, v);
                }
            }
        }
        c.legend(series, false);
        return c.end();
    }

    /** Columns from one level to another. */
    static String waterfall(String title, List<String> categories, double[] from, double[] to) {
        SvgChart c = new SvgChart(title, false);
        c.begin(List.of(new Series("", from), new Series("", to)), categories);
        c.bottomNames(categories);
        double slot = (WIDTH - c.left - RIGHT) / categories.size();
        for (int i = 0; i < categories.size(); i++) {
            c.bar("solid", c.left + slot * (i + 0.2), slot * 0.6, from[i], to[i]);
        }
        return c.end();
    }

    /** Bars beside their names, the first at the top. */
    static String bars(String title, List<String> categories, List<Series> series) {
        SvgChart c = new SvgChart(title, false);
        c.right = MARGIN_OF_BARS;
        c.left = 12
                + CHARACTER * categories.stream().mapToInt(String::length).max().orElse(0);
        c.bottom = 40;
        c.range(series);
        c.open();
        double slot = (HEIGHT - TOP - c.bottom) / Math.max(1, categories.size());
        for (int step = 0; step <= STEPS; step++) {
            double v = c.low + (c.high - c.low) * step / STEPS;
            double x = c.across(v);
            c.add(
                    "<line class=\"grid\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>",
                    x, TOP, x, HEIGHT - c.bottom);
            c.label(x, HEIGHT - c.bottom + 12, "middle", c.number(v));
        }
        double thick = slot * 0.8 / series.size();
        for (int i = 0; i < categories.size(); i++) {
            c.label(c.left - 5, TOP + slot * (i + 0.5) + 3.5, "end", categories.get(i));
            for (int s = 0; s < series.size(); s++) {
                double v = series.get(s).values[i];
                if (!Double.isNaN(v)) {
                    double from = c.across(Math.min(0, v));
                    c.add(
                            "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
                            LOOKS.get(s),
                            from,
                            TOP + slot * (i + 0.1) + thick * s,
                            c.across(Math.max(0, v)) - from,
                            thick);
                }
            }
        }
        c.legend(series, false);
        return c.end();
    }

    private void begin(List<Series> series, List<String> categories) {
        range(series);
        int longest = categories.stream().mapToInt(String::length).max().orElse(0);
        bottom = 30 + Math.min(60, longest * CHARACTER * 0.75);
        open();
        for (int step = 0; step <= STEPS; step++) {
            double v = low + (high - low) * step / STEPS;
            add(
                    "<line class=\"grid\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>",
                    left, y(v), WIDTH - RIGHT, y(v));
            label(left - 5, y(v) + 3.5, "end", number(v));
        }
    }

    private void open() {
        add("<svg viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">", WIDTH, HEIGHT, Html.text(title));
        out.append("<title>").append(Html.text(title)).append("</title>");
    }

    /** Ends of the axis: round numbers, 0 among them unless the values are shares. */
    private void range(List<Series> series) {
        double least = 0;
        double most = 0;
        for (Series s : series) {
            for (double v : s.values) {
                if (Double.isFinite(v)) {
                    least = Math.min(least, v);
                    most = Math.max(most, v);
                }
            }
        }
        if (percent && most <= 0) { // nothing to show: shares all the same
            most = 1;
        }
        double step = round((most - least) / STEPS);
        low = Math.floor(least / step) * step;
        high = low + step * STEPS;
        while (high < most) {
            step = round(step * 1.01);
            low = Math.floor(least / step) * step;
            high = low + step * STEPS;
        }
    }

    private static double round(double step) {
        if (!(step > 0)) {
            return 1;
        }
        double ten = Math.pow(10, Math.floor(Math.log10(step)));
        for (double nice : new double[] {1, 2, 2.5, 5, 10}) {
            if (nice * ten >= step - 1e-12) {
                return nice * ten;
            }
        }
        return 10 * ten;
    }

    private double x(int i, int n) {
        return left + (WIDTH - left - RIGHT) * (i + 0.5) / n;
    }

    /** Where a value stands on an axis from left to right. */
    private double across(double v) {
        return left + (WIDTH - left - right) * (v - low) / (high - low);
    }

    private double y(double v) {
        return TOP + (HEIGHT - TOP - bottom) * (high - v) / (high - low);
    }

    private void bar(String look, double x, double width, double from, double to) {
        add(
                "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
                look, x, y(Math.max(from, to)), width, Math.max(0.5, Math.abs(y(from) - y(to))));
    }

    private void line(double[] values, int n, String look) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < n; i++) {
            if (!Double.isNaN(values[i])) {
                points.append(String.format(Locale.ROOT, "%.1f,%.1f ", x(i, n), y(values[i])));
            }
        }
        out.append("<polyline class=\"")
                .append(look)
                .append("\" points=\"")
                .append(points.toString().strip())
                .append("\"/>");
    }

    private void bottomNames(List<String> categories) {
        for (int i = 0; i < categories.size(); i++) {
            double x = x(i, categories.size()) + 3;
            double at = HEIGHT - bottom + 11;
            add(
                    "<text text-anchor=\"end\" transform=\"rotate(-40 %.1f %.1f)\" x=\"%.1f\" y=\"%.1f\">%s</text>",
                    x, at, x, at, Html.text(categories.get(i)));
        }
    }

    private void legend(List<Series> series, boolean lines) {
        double x = left;
        double y = HEIGHT - 6;
        for (int s = 0; s < series.size(); s++) {
            if (lines) {
                String look = s == 0 ? "line" : s == 1 ? "line centre" : "line limit";
                add("<polyline class=\"%s\" points=\"%.1f,%.1f %.1f,%.1f\"/>", look, x, y - 3, x + 18, y - 3);
            } else {
                add("<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"10\" height=\"8\"/>", LOOKS.get(s), x + 6, y - 7);
            }
            label(x + 22, y, "start", series.get(s).name);
            x += 34 + CHARACTER * series.get(s).name.length();
        }
    }

    private void label(double x, double y, String anchor, String text) {
        add("<text text-anchor=\"%s\" x=\"%.1f\" y=\"%.1f\">%s</text>", anchor, x, y, Html.text(text));
    }

    private String number(double v) {
        return percent ? Digits.grouped(100 * v, 0) + " %" : Digits.grouped(v, high - low < STEPS ? 1 : 0);
    }

    private void add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values));
    }

    private String end() {
        return out.append("</svg>").toString();
    }
}
