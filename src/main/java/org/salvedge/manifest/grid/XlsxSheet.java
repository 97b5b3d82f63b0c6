package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.CDATA;
import static javax.xml.stream.XMLStreamConstants.CHARACTERS;
import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.util.List;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** The cells of one worksheet part. */
final class XlsxSheet {
    private static final int LAST_ROW = 1 << 20;
    private static final int LONGEST_VALUE = 32_767;

    private final @Nullable List<String> shared;
    private final SheetBuilder sheet;
    private final StringBuilder value = new StringBuilder();
    private int row;
    private int column = -1;
    private int style;
    private String type = "n";
    private boolean hasFormula;
    private boolean hasText;

    XlsxSheet(@Nullable List<String> shared, SheetBuilder sheet) {
        this.shared = shared;
        this.sheet = sheet;
    }

    void read(XMLStreamReader xml) throws XMLStreamException {
        boolean inValue = false;
        while (xml.hasNext()) {
            int event = SafeXml.next(xml);
            if (event == START_ELEMENT) {
                String name = xml.getLocalName();
                switch (name) {
                    case "c" -> startCell(xml);
                    case "v" -> {
                        inValue = true;
                        value.setLength(0);
                    }
                    case "f" -> hasFormula = true;
                    case "is" -> {
                        XlsxTexts.readRuns(xml, "is", value, LONGEST_VALUE);
                        hasText = true;
                    }
                    case "row" -> startRow(xml);
                    case "mergeCell" -> Reference.merge(SafeXml.attribute(xml, "ref", ""), sheet);
                    default -> {}
                }
            } else if (event == END_ELEMENT) {
                String name = xml.getLocalName();
                if (name.equals("v")) {
                    inValue = false;
                } else if (name.equals("c")) {
                    endCell();
                }
            } else if (inValue && (event == CHARACTERS || event == CDATA) && value.length() <= LONGEST_VALUE) {
                value.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
            }
        }
    }

    private void startRow(XMLStreamReader xml) {
        int given = SafeXml.whole(SafeXml.attribute(xml, "r"), 0);
        row = given >= 1 && given <= LAST_ROW ? given : row + 1;
        column = -1;
        sheet.startRow(row);
    }

    private void startCell(XMLStreamReader xml) {
        column++;
        style = 0;
        type = "n";
        hasFormula = false;
        hasText = false;
        value.setLength(0);
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            switch (xml.getAttributeLocalName(i)) {
                case "r" -> {
                    int given = Reference.column(xml.getAttributeValue(i));
                    column = given >= 0 ? given : column;
                }
                case "s" -> style = SafeXml.whole(xml.getAttributeValue(i), 0);
                case "t" -> type = xml.getAttributeValue(i);
                default -> {}
            }
        }
    }

    private void endCell() {
        if (value.length() == 0) {
            if (hasFormula && !type.equals("str")) {
                sheet.damaged(column, "", "is a formula without a stored value");
            }
            return;
        }
        switch (type) {
            case "s" -> shared();
            case "str", "inlineStr", "d" -> sheet.text(column, CellText.unescaped(value));
            case "b" -> sheet.text(column, value.toString().equals("0") ? "FALSE" : "TRUE");
            case "e" -> sheet.error(column, value.toString());
            default -> {
                if (hasText) {
                    sheet.text(column, CellText.unescaped(value));
                } else {
                    number();
                }
            }
        }
    }

    private void shared() {
        int index = SafeXml.whole(value.toString().strip(), -1);
        if (shared == null) {
            throw BadFile.torn("its part with the shared texts is missing");
        }
        if (index < 0 || index >= shared.size()) {
            sheet.damaged(column, value.toString(), "points to a shared text that is not in the file");
        } else {
            sheet.cleanText(column, shared.get(index));
        }
    }

    private void number() {
        Numbers.parse(value, column, style, sheet);
    }
}
