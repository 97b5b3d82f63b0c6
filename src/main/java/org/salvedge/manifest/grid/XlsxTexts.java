package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.CDATA;
import static javax.xml.stream.XMLStreamConstants.CHARACTERS;
import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Texts of a workbook: the shared ones, and any run of {@code t} elements. */
final class XlsxTexts {
    private XlsxTexts() {}

    /** The shared texts, cleaned, in order. */
    static List<String> read(XMLStreamReader xml, Budget budget) throws XMLStreamException {
        List<String> texts = new ArrayList<>();
        StringBuilder buffer = new StringBuilder();
        while (xml.hasNext()) {
            if (SafeXml.next(xml) == START_ELEMENT && xml.getLocalName().equals("si")) {
                readRuns(xml, "si", buffer, budget.limits().textLength());
                String text = CellText.clean(
                        CellText.unescaped(buffer), budget.limits().textLength());
                texts.add(text);
                budget.text(text);
            }
        }
        return texts;
    }

    /** Collects the {@code t} elements up to the end of the element; reading aids (phonetic runs) are left out. */
    static void readRuns(XMLStreamReader xml, String end, StringBuilder into, int longest) throws XMLStreamException {
        into.setLength(0);
        int depth = 1;
        int phonetic = 0;
        boolean inText = false;
        while (depth > 0) {
            int event = SafeXml.next(xml);
            if (event == START_ELEMENT) {
                depth++;
                inText = xml.getLocalName().equals("t");
                if (xml.getLocalName().equals("rPh")) {
                    phonetic = depth;
                }
            } else if (event == END_ELEMENT) {
                inText = false;
                if (depth == phonetic) {
                    phonetic = 0;
                }
                depth--;
            } else if (inText && phonetic == 0 && (event == CHARACTERS || event == CDATA) && into.length() <= longest) {
                into.append(xml.getTextCharacters(), xml.getTextStart(), xml.getTextLength());
            }
        }
    }
}
