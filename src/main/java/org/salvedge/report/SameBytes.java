package org.salvedge.report;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** Copies a zip file without the times of its making, so that the same content gives the same bytes. Nothing is packed again. */
final class SameBytes {
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);
    private static final String FIRST = "[Content_Types].xml";

    private SameBytes() {}

    static void copy(byte[] zip, OutputStream out) throws IOException {
        try (ZipFile from = ZipFile.builder()
                        .setSeekableByteChannel(new SeekableInMemoryByteChannel(zip))
                        .get();
                ZipArchiveOutputStream to = new ZipArchiveOutputStream(out)) {
            List<ZipArchiveEntry> entries = new ArrayList<>(Collections.list(from.getEntries()));
            entries.sort(Comparator.<ZipArchiveEntry, Boolean>comparing(
                            e -> !e.getName().equals(FIRST))
                    .thenComparing(ZipArchiveEntry::getName));
            for (ZipArchiveEntry entry : entries) {
                ZipArchiveEntry plain = new ZipArchiveEntry(entry.getName());
                plain.setMethod(entry.getMethod());
                plain.setSize(entry.getSize());
                plain.setCompressedSize(entry.getCompressedSize());
                plain.setCrc(entry.getCrc());
                plain.setTimeLocal(NO_TIME);
                to.addRawArchiveEntry(plain, from.getRawInputStream(entry));
            }
        }
    }
}
