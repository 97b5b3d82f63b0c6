package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.END_ELEMENT;
import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.jspecify.annotations.Nullable;

/** The number format of each cell style of a workbook. */
final class XlsxFormats {
    private static final int MOST = 100_000;

    private XlsxFormats() {}

    /** Formats by the index that cells give in {@code s}. */
    static List<NumberFormat> read(XMLStreamReader xml) throws XMLStreamException {
        Map<Integer, String> codes = new HashMap<>();
        Map<Integer, NumberFormat> known = new HashMap<>();
        List<NumberFormat> formats = new ArrayList<>();
        boolean inCellFormats = false;
        while (xml.hasNext()) {
            int event = SafeXml.next(xml);
            if (event == END_ELEMENT && xml.getLocalName().equals("cellXfs")) {
                inCellFormats = false;
            }
            if (event != START_ELEMENT || formats.size() > MOST || codes.size() > MOST) {
                continue;
            }
            switch (xml.getLocalName()) {
                case "numFmt" ->
                    codes.put(
                            SafeXml.whole(SafeXml.attribute(xml, "numFmtId"), -1),
                            SafeXml.attribute(xml, "formatCode", "General"));
                case "cellXfs" -> inCellFormats = true;
                case "xf" -> {
                    if (inCellFormats) {
                        int id = SafeXml.whole(SafeXml.attribute(xml, "numFmtId"), 0);
                        formats.add(known.computeIfAbsent(id, i -> of(i, codes.get(i))));
                    }
                }
                default -> {}
            }
        }
        return formats.isEmpty() ? List.of(NumberFormat.GENERAL) : formats;
    }

    /** @param code null where the workbook does not define the format itself */
    static NumberFormat of(int id, @Nullable String code) {
        if (code != null) {
            return NumberFormat.of(id, code);
        }
        return NumberFormat.of(id, id >= 0 && id < 50 ? BuiltinFormats.getBuiltinFormat(id) : null);
    }
}
