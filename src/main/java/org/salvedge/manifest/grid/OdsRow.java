package org.salvedge.manifest.grid;

import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** The cells of one OpenDocument row, kept until it is known how often the row is repeated. */
final class OdsRow {
    /** @param shown the text a person sees */
    private record Value(int column, String type, @Nullable String value, String shown) {}

    private record Span(int column, int wide, int tall) {}

    private final Limits limits;
    private final List<Value> values = new ArrayList<>();
    private final List<Span> spans = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();
    private int column;
    private int repeats = 1;
    private String type = "";
    private @Nullable String value;
    private boolean hasFormula;
    private boolean inParagraph;
    private boolean inCell;

    OdsRow(Limits limits) {
        this.limits = limits;
    }

    void clear() {
        values.clear();
        spans.clear();
        column = 0;
    }

    boolean isEmpty() {
        return values.isEmpty();
    }

    void startCell(XMLStreamReader xml) {
        repeats = 1;
        type = "";
        value = null;
        hasFormula = false;
        inCell = true;
        text.setLength(0);
        int wide = 1;
        int tall = 1;
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            String given = xml.getAttributeValue(i);
            switch (xml.getAttributeLocalName(i)) {
                case "number-columns-repeated" -> repeats = Math.max(1, SafeXml.whole(given, 1));
                case "number-columns-spanned" -> wide = Math.max(1, SafeXml.whole(given, 1));
                case "number-rows-spanned" -> tall = Math.max(1, SafeXml.whole(given, 1));
                case "value-type" -> type = type.isEmpty() ? given : type;
                case "value", "date-value", "boolean-value", "string-value" -> value = given;
                case "formula" -> hasFormula = true;
                default -> {}
            }
        }
        if ((wide > 1 || tall > 1) && column < limits.columns()) {
            spans.add(new Span(column, wide, tall));
        }
    }

    void startParagraph() {
        if (inCell) {
            if (!text.isEmpty()) {
                text.append('\n');
            }
            inParagraph = true;
        }
    }

    void endParagraph() {
        inParagraph = false;
    }

    void spaces(int count) {
        if (inParagraph) {
            text.append(" ".repeat(Math.min(count, 100)));
        }
    }

    void lineBreak() {
        if (inParagraph) {
            text.append('\n');
        }
    }

    void characters(XMLStreamReader xml) {
        if (inParagraph && text.length() <= limits.textLength()) {
            text.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
        }
    }

    void endCell() {
        inCell = false;
        boolean holds = !type.isEmpty() || !text.isEmpty() || hasFormula;
        if (holds) {
            int last = (int) Math.min(limits.columns(), (long) column + repeats);
            String shown = text.toString();
            for (int c = column; c < last; c++) {
                values.add(new Value(c, type, value, shown));
            }
        }
        column = (int) Math.min(1 << 20, (long) column + repeats);
    }

    void copyTo(SheetBuilder sheet, int rowNumber) {
        for (Value cell : values) {
            copyTo(sheet, cell);
        }
        for (Span span : spans) {
            long lastRow = Math.min(1 << 20, (long) rowNumber + span.tall - 1);
            long lastColumn = Math.min(limits.columns(), (long) span.column + span.wide - 1);
            sheet.merge(rowNumber, span.column, (int) lastRow, (int) lastColumn);
        }
    }

    private static void copyTo(SheetBuilder sheet, Value cell) {
        String number = cell.value;
        if (cell.shown.startsWith("#") && cell.shown.endsWith("!")
                || cell.shown.startsWith("Err:")
                || cell.shown.equals("#N/A")
                || cell.shown.equals("#NAME?")) {
            sheet.error(cell.column, cell.shown);
        } else if (cell.type.equals("date") && number != null) {
            sheet.text(cell.column, number.replaceFirst("T00:00:00(\\.0+)?$", ""));
        } else if ((cell.type.equals("float") || cell.type.equals("currency") || cell.type.equals("percentage"))
                && number != null) {
            if (cell.type.equals("float") && tellsMore(cell.shown)) {
                sheet.text(cell.column, cell.shown);
            } else {
                Numbers.parse(number, cell.column, 0, sheet);
            }
        } else if (cell.type.equals("boolean")) {
            sheet.text(cell.column, "false".equals(number) ? "FALSE" : "TRUE");
        } else {
            sheet.text(cell.column, cell.shown.isEmpty() && number != null ? number : cell.shown);
        }
    }

    /** Leading zeros or a unit, put there by the display format. */
    private static boolean tellsMore(String shown) {
        String text = shown.strip();
        if (text.length() > 1
                && text.charAt(0) == '0'
                && text.chars().allMatch(c -> c >= '0' && c <= '9' || c == '-')) {
            return true;
        }
        return text.indexOf('"') >= 0
                || text.codePoints().filter(Character::isLetter).count() > 1
                        && !text.toUpperCase(java.util.Locale.ROOT).matches(".*\\d[.,]?\\d*E[+-]?\\d+.*")
                        && !text.matches(".*\\b[A-Z]{3}\\b.*");
    }
}
