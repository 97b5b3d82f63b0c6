package org.salvedge.manifest.grid;

import java.util.Locale;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;
import org.jspecify.annotations.Nullable;

/** How a spreadsheet shows a number: only what matters to a reader who must not lose digits. */
public final class NumberFormat {
    public static final NumberFormat GENERAL = new NumberFormat("General", false, false, 0);
    static final NumberFormat DATE = new NumberFormat("yyyy-mm-dd", true, false, 0);

    private static final int LONGEST_CODE = 255;
    private static final int FIRST_CUSTOM = 164;

    private final String code;
    private final boolean date;
    private final boolean custom;
    private final int zeros;

    private NumberFormat(String code, boolean date, boolean custom, int zeros) {
        this.code = code;
        this.date = date;
        this.custom = custom;
        this.zeros = zeros;
    }

    /** @param id of the format in the workbook; below 164 it is one of those every program knows */
    static NumberFormat of(int id, @Nullable String code) {
        if (code == null || code.length() > LONGEST_CODE || code.equalsIgnoreCase("General") || code.equals("@")) {
            return GENERAL;
        }
        if (isDate(id, code)) {
            return new NumberFormat(code, true, false, 0);
        }
        int zeros = code.length() > 1 && code.chars().allMatch(c -> c == '0') ? code.length() : 0;
        boolean tells = zeros == 0 && id >= FIRST_CUSTOM && tellsMoreThanTheNumber(code);
        return new NumberFormat(code, false, tells, zeros);
    }

    private static boolean isDate(int id, String code) {
        try {
            return DateUtil.isADateFormat(id, code);
        } catch (RuntimeException e) { // a hostile code
            return false;
        }
    }

    /** Leading zeros among other signs, or words and units written around the number. */
    private static boolean tellsMoreThanTheNumber(String code) {
        String first = code.split(";", 2)[0];
        return first.contains("\"")
                || first.contains("\\")
                || first.contains("00-")
                || first.startsWith("000")
                || first.contains("0 0");
    }

    public boolean isDate() {
        return date;
    }

    /** Whether the shown text says more than the number itself: a unit, leading zeros among dashes. */
    public boolean isTelling() {
        return custom || zeros > 0;
    }

    /** The number as it is shown where the format is {@link #isTelling()}, in full otherwise. */
    String show(double value, String inFull) {
        if (zeros > 0 && inFull.length() < zeros && inFull.chars().allMatch(c -> c >= '0' && c <= '9')) {
            return "0".repeat(zeros - inFull.length()) + inFull;
        }
        if (!custom) {
            return inFull;
        }
        try {
            String shown = new DataFormatter(Locale.ROOT).formatRawCellContents(value, -1, code);
            return shown.length() > LONGEST_CODE ? inFull : shown.strip();
        } catch (RuntimeException e) { // a hostile code
            return inFull;
        }
    }
}
