package org.salvedge.manifest.grid;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** What stands in one cell. */
public final class Cell {
    /** What kind of value it is. DAMAGED: the file promises a value that is not there or cannot be one. */
    public enum Kind {
        BLANK,
        TEXT,
        NUMBER,
        DATE,
        ERROR,
        DAMAGED
    }

    /** Whether the value stands in the cell itself, or reaches it by a merge from the left or from above. */
    public enum Origin {
        OWN,
        LEFT,
        ABOVE
    }

    public static final Cell BLANK = new Cell(Kind.BLANK, Origin.OWN, "", Double.NaN, NumberFormat.GENERAL, null);

    /** Above this a spreadsheet's number no longer holds every digit. */
    private static final double LARGEST_COMPLETE = 1e15;

    private final Kind kind;
    private final Origin origin;
    private final String text;
    private final double number;
    private final NumberFormat format;
    private final @Nullable String damage;

    private Cell(Kind kind, Origin origin, String text, double number, NumberFormat format, @Nullable String damage) {
        this.kind = kind;
        this.origin = origin;
        this.text = text;
        this.number = number;
        this.format = format;
        this.damage = damage;
    }

    /** @param text without outer spaces; blank text makes a blank cell */
    public static Cell text(String text) {
        return text.isEmpty() ? BLANK : new Cell(Kind.TEXT, Origin.OWN, text, Double.NaN, NumberFormat.GENERAL, null);
    }

    static Cell number(double value, NumberFormat format, boolean from1904) {
        if (format.isDate()) {
            String shown = SerialDate.show(value, from1904);
            return new Cell(Kind.DATE, Origin.OWN, shown, value, format, null);
        }
        return new Cell(Kind.NUMBER, Origin.OWN, "", value, format, null);
    }

    static Cell error(String shown) {
        return new Cell(Kind.ERROR, Origin.OWN, shown, Double.NaN, NumberFormat.GENERAL, null);
    }

    static Cell damaged(String found, String why) {
        return new Cell(Kind.DAMAGED, Origin.OWN, found, Double.NaN, NumberFormat.GENERAL, why);
    }

    Cell by(Origin way) {
        return new Cell(kind, way, text, number, format, damage);
    }

    public Kind kind() {
        return kind;
    }

    public Origin origin() {
        return origin;
    }

    public boolean isBlank() {
        return kind == Kind.BLANK;
    }

    public boolean isNumber() {
        return kind == Kind.NUMBER;
    }

    /** The number, NaN where there is none. */
    public double number() {
        return number;
    }

    public NumberFormat format() {
        return format;
    }

    /** What is wrong with a damaged cell. */
    public @Nullable String damage() {
        return damage;
    }

    /** What a person sees: display formats that add zeros or units are honoured, other numbers are written in full. */
    public String shown() {
        return kind == Kind.NUMBER ? format.show(number, inFull(number)) : text;
    }

    /** Whether a number is too long for all of its digits to have been kept. */
    public boolean hasLostDigits() {
        return kind == Kind.NUMBER && Math.abs(number) >= LARGEST_COMPLETE;
    }

    private static String inFull(double value) {
        if (value == Math.rint(value) && Math.abs(value) < LARGEST_COMPLETE) {
            return Long.toString((long) value);
        }
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
                : Double.toString(value);
    }

    @Override
    public String toString() {
        return shown();
    }
}
