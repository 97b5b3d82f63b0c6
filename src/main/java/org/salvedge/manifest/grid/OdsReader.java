package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.CDATA;
import static javax.xml.stream.XMLStreamConstants.CHARACTERS;
import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** OpenDocument spreadsheets (ISO/IEC 26300), packed or flat. Repeated rows and cells are counted, not believed. */
final class OdsReader {
    private static final int LAST_ROW = 1 << 20;
    private static final int MOST_STYLES = 100_000;

    private final Budget budget;
    private final List<Sheet> sheets = new ArrayList<>();
    private final Set<String> hiddenStyles = new HashSet<>();
    private final OdsRow row;
    private @Nullable SheetBuilder sheet;
    private String style = "";
    private int rowNumber = 1;
    private int rowRepeats = 1;
    private int depthOfTable;

    private OdsReader(Budget budget) {
        this.budget = budget;
        this.row = new OdsRow(budget.limits());
    }

    static Grid read(Parts parts, Budget budget) throws IOException {
        try (InputStream manifest = parts.find("META-INF/manifest.xml")) {
            if (manifest != null && isLocked(manifest)) {
                throw new BadFile(
                        "is an OpenDocument spreadsheet with a password", "Open it and save it without the password");
            }
        }
        try (InputStream in = parts.need("content.xml")) {
            return read(in, budget);
        }
    }

    static Grid read(InputStream in, Budget budget) throws IOException {
        try {
            OdsReader reader = new OdsReader(budget);
            reader.read(new SafeXml().open(in));
            return Grid.of("an OpenDocument spreadsheet", reader.sheets);
        } catch (XMLStreamException e) {
            throw BadFile.torn("its content is no well-formed XML");
        }
    }

    private static boolean isLocked(InputStream manifest) {
        try {
            XMLStreamReader xml = new SafeXml().open(manifest);
            while (xml.hasNext()) {
                if (SafeXml.next(xml) == START_ELEMENT && xml.getLocalName().equals("encryption-data")) {
                    return true;
                }
            }
            return false;
        } catch (XMLStreamException | BadFile e) {
            return false; // some writers declare a document type here; the content decides
        }
    }

    private void read(XMLStreamReader xml) throws XMLStreamException {
        int aside = 0;
        while (xml.hasNext()) {
            int event = SafeXml.next(xml);
            if (event == START_ELEMENT) {
                String name = xml.getLocalName();
                if (aside > 0 || name.equals("annotation") || name.equals("shapes") || name.equals("tracked-changes")) {
                    aside++;
                } else {
                    start(xml, name);
                }
            } else if (event == END_ELEMENT) {
                if (aside > 0) {
                    aside--;
                } else {
                    end(xml.getLocalName());
                }
            } else if (aside == 0 && (event == CHARACTERS || event == CDATA)) {
                row.characters(xml);
            }
        }
    }

    private void start(XMLStreamReader xml, String name) {
        switch (name) {
            case "style" -> style = SafeXml.attribute(xml, "name", "");
            case "table-properties" -> {
                if ("false".equals(SafeXml.attribute(xml, "display")) && hiddenStyles.size() < MOST_STYLES) {
                    hiddenStyles.add(style);
                }
            }
            case "table" -> startTable(xml);
            case "table-row" -> {
                rowRepeats = Math.max(1, SafeXml.whole(SafeXml.attribute(xml, "number-rows-repeated"), 1));
                row.clear();
            }
            case "table-cell", "covered-table-cell" -> row.startCell(xml);
            case "p", "h" -> row.startParagraph();
            case "s" -> row.spaces(SafeXml.whole(SafeXml.attribute(xml, "c"), 1));
            case "tab", "line-break" -> row.lineBreak();
            default -> {}
        }
    }

    private void startTable(XMLStreamReader xml) {
        if (depthOfTable++ == 0) {
            String name = CellText.clean(SafeXml.attribute(xml, "name", ""), 100);
            boolean hidden = hiddenStyles.contains(SafeXml.attribute(xml, "style-name", ""));
            sheet = new SheetBuilder(name, !hidden, false, List.of(NumberFormat.GENERAL), budget);
            rowNumber = 1;
        }
    }

    private void end(String name) {
        switch (name) {
            case "p", "h" -> row.endParagraph();
            case "table-cell", "covered-table-cell" -> row.endCell();
            case "table-row" -> endRow();
            case "table" -> {
                if (--depthOfTable == 0 && sheet != null) {
                    sheets.add(sheet.build());
                    sheet = null;
                }
            }
            default -> {}
        }
    }

    private void endRow() {
        if (sheet != null && !row.isEmpty()) {
            for (int i = 0; i < rowRepeats && rowNumber + i <= LAST_ROW; i++) {
                sheet.startRow(rowNumber + i);
                row.copyTo(sheet, rowNumber + i);
            }
        }
        rowNumber = (int) Math.min(LAST_ROW + 1L, (long) rowNumber + rowRepeats);
    }
}
