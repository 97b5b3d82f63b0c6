package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.CDATA;
import static javax.xml.stream.XMLStreamConstants.CHARACTERS;
import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** The XML spreadsheets of 2003 (SpreadsheetML): one file, no packing. */
final class XmlTableReader {
    private static final int LAST_ROW = 1 << 20;
    private static final int MOST_STYLES = 10_000;

    private final Budget budget;
    private final List<Sheet> sheets = new ArrayList<>();
    private final List<NumberFormat> formats = new ArrayList<>(List.of(NumberFormat.GENERAL));
    private final Map<String, Integer> styles = new HashMap<>();
    private final StringBuilder text = new StringBuilder();
    private @Nullable SheetBuilder sheet;
    private String style = "";
    private boolean from1904;
    private int row;
    private int column;
    private int wide;
    private int cellStyle;
    private String type = "";
    private boolean hasFormula;
    private boolean hasData;

    private XmlTableReader(Budget budget) {
        this.budget = budget;
    }

    static Grid read(InputStream in, Budget budget) throws IOException {
        try {
            XmlTableReader reader = new XmlTableReader(budget);
            reader.read(new SafeXml().open(in));
            return Grid.of("an XML spreadsheet", reader.sheets);
        } catch (XMLStreamException e) {
            throw BadFile.torn("it is no well-formed XML");
        }
    }

    private void read(XMLStreamReader xml) throws XMLStreamException {
        int inData = 0;
        String element = "";
        while (xml.hasNext()) {
            int event = SafeXml.next(xml);
            if (event == START_ELEMENT) {
                element = xml.getLocalName();
                if (inData > 0) {
                    inData++;
                } else if (element.equals("Data")) {
                    inData = 1;
                    hasData = true;
                    type = SafeXml.attribute(xml, "Type", "String");
                    text.setLength(0);
                } else {
                    start(xml, element);
                }
            } else if (event == END_ELEMENT) {
                if (inData > 0) {
                    inData--;
                } else {
                    end(xml.getLocalName());
                }
            } else if (event == CHARACTERS || event == CDATA) {
                if (inData > 0 && text.length() <= budget.limits().textLength()) {
                    text.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
                } else if (element.equals("Visible")
                        && sheet != null
                        && xml.getText().contains("Hidden")) {
                    sheet.hide();
                }
            }
        }
    }

    private void start(XMLStreamReader xml, String element) {
        switch (element) {
            case "Date1904" -> from1904 = true;
            case "Style" -> style = SafeXml.attribute(xml, "ID", "");
            case "NumberFormat" -> addFormat(SafeXml.attribute(xml, "Format", "General"));
            case "Worksheet" -> {
                String name = CellText.clean(SafeXml.attribute(xml, "Name", ""), 100);
                sheet = new SheetBuilder(name, true, from1904, formats, budget);
                row = 0;
            }
            case "Row" -> startRow(xml);
            case "Cell" -> startCell(xml);
            default -> {}
        }
    }

    private void addFormat(String code) {
        if (styles.size() < MOST_STYLES) {
            String lower = code.toLowerCase(Locale.ROOT);
            boolean date = lower.endsWith(" date") || lower.endsWith(" time");
            styles.put(style, formats.size());
            formats.add(date ? NumberFormat.DATE : NumberFormat.of(200, code));
        }
    }

    private void startRow(XMLStreamReader xml) {
        int given = SafeXml.whole(SafeXml.attribute(xml, "Index"), 0);
        row = given >= 1 && given <= LAST_ROW ? given : row + 1;
        column = 0;
        if (sheet != null) {
            sheet.startRow(row);
        }
        row = Math.min(LAST_ROW, row + SafeXml.whole(SafeXml.attribute(xml, "Span"), 0));
    }

    private void startCell(XMLStreamReader xml) {
        int given = SafeXml.whole(SafeXml.attribute(xml, "Index"), 0);
        column = given >= 1 ? given - 1 : column;
        wide = SafeXml.whole(SafeXml.attribute(xml, "MergeAcross"), 0);
        int tall = SafeXml.whole(SafeXml.attribute(xml, "MergeDown"), 0);
        if (sheet != null && (wide > 0 || tall > 0)) {
            sheet.merge(row, column, Math.min(LAST_ROW, row + tall), Math.min(1 << 14, column + wide));
        }
        cellStyle = styles.getOrDefault(SafeXml.attribute(xml, "StyleID", ""), 0);
        hasFormula = SafeXml.attribute(xml, "Formula") != null;
        hasData = false;
    }

    private void end(String element) {
        if (sheet == null) {
            return;
        }
        if (element.equals("Cell")) {
            endCell(sheet);
            column = Math.min(1 << 14, column + 1 + wide);
        } else if (element.equals("Worksheet")) {
            sheets.add(sheet.build());
            sheet = null;
        }
    }

    private void endCell(SheetBuilder into) {
        if (!hasData) {
            if (hasFormula) {
                into.damaged(column, "", "is a formula without a stored value");
            }
            return;
        }
        switch (type) {
            case "Number" -> Numbers.parse(text.toString().strip(), column, cellStyle, into);
            case "Error" -> into.error(column, text.toString());
            case "Boolean" -> into.text(column, text.toString().strip().equals("0") ? "FALSE" : "TRUE");
            case "DateTime" -> into.text(column, text.toString().replaceFirst("T00:00:00(\\.0+)?$", ""));
            default -> into.text(column, text.toString());
        }
    }
}
