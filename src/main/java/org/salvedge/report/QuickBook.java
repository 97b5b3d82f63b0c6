package org.salvedge.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.streaming.SheetDataWriter;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jspecify.annotations.Nullable;

/** Streams long sheets; packs them quickly, since the last few percent take longer than the rest. */
final class QuickBook extends SXSSFWorkbook {
    private static final int ROWS_IN_MEMORY = 200;
    private static final int LEVEL = 2;

    /** Filled by the constructor of POI's class already, so that nothing may be assigned here. */
    private @Nullable List<SheetRows> sheets;

    QuickBook(XSSFWorkbook book) {
        super(book, ROWS_IN_MEMORY);
    }

    @Override
    protected SheetDataWriter createSheetDataWriter() throws IOException {
        SheetRows rows = SheetRows.create();
        List<SheetRows> all = sheets == null ? new ArrayList<>() : sheets;
        sheets = all;
        all.add(rows);
        return rows;
    }

    @Override
    protected ZipArchiveOutputStream createArchiveOutputStream(OutputStream out) {
        ZipArchiveOutputStream zip = super.createArchiveOutputStream(out);
        zip.setLevel(LEVEL);
        return zip;
    }

    /** The passing files that hold rows. */
    List<Path> passing() {
        return Stream.ofNullable(sheets)
                .flatMap(List::stream)
                .map(SheetRows::passing)
                .flatMap(Stream::ofNullable)
                .toList();
    }

    @Override
    public void close() throws IOException {
        try {
            super.close();
        } finally {
            for (SheetRows rows : sheets == null ? List.<SheetRows>of() : sheets) {
                rows.forget();
            }
        }
    }
}
