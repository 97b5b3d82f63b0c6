package org.salvedge.manifest.grid;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.hssf.record.ExtendedFormatRecord;
import org.apache.poi.hssf.record.FormatRecord;

/** Number formats of an XLS workbook: styles first name a format, the formats' codes may come before. */
final class XlsFormats {
    private static final int MOST = 70_000;

    private final Map<Integer, String> codes = new HashMap<>();
    private final List<Integer> styles = new ArrayList<>();

    void add(FormatRecord record) {
        codes.putIfAbsent(record.getIndexCode(), record.getFormatString());
    }

    void add(ExtendedFormatRecord record) {
        if (styles.size() < MOST) {
            styles.add((int) record.getFormatIndex());
        }
    }

    /** Formats by style index. */
    List<NumberFormat> list() {
        Map<Integer, NumberFormat> known = new HashMap<>();
        List<NumberFormat> formats = new ArrayList<>();
        for (int id : styles) {
            formats.add(known.computeIfAbsent(id, i -> XlsxFormats.of(i, codes.get(i))));
        }
        return formats.isEmpty() ? List.of(NumberFormat.GENERAL) : formats;
    }
}
