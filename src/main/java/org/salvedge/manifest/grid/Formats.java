package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a file really is, by its first bytes. */
final class Formats {
    private static final int LOOK = 8192;

    private Formats() {}

    static List<Sheet> read(Path file, @Nullable String password, Budget budget) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(LOOK);
        }
        if (head.length == 0) {
            throw new BadFile("is empty", "Ask the seller to send it again");
        }
        if (starts(head, 0x50, 0x4B, 3, 4) || starts(head, 0x50, 0x4B, 5, 6)) {
            return XlsxGrid.read(file, budget);
        }
        if (starts(head, 0xD0, 0xCF, 0x11, 0xE0)) {
            return XlsGrid.read(file, password, budget);
        }
        String ascii = new String(head, StandardCharsets.ISO_8859_1);
        if (ascii.startsWith("%PDF")) {
            throw BadFile.notATable("a PDF document", "Ask the seller for the spreadsheet itself");
        }
        if (starts(head, 0x89, 'P', 'N', 'G') || starts(head, 0xFF, 0xD8, 0xFF) || ascii.startsWith("GIF8")) {
            throw BadFile.notATable("a picture", "Ask the seller for the spreadsheet itself");
        }
        if (starts(head, 0x1F, 0x8B) || ascii.startsWith("Rar!") || ascii.startsWith("7z")) {
            throw BadFile.notATable("a packed archive", "Unpack it first");
        }
        String lower = ascii.toLowerCase(Locale.ROOT);
        if (lower.contains("<html") || lower.contains("<table") || lower.contains("<!doctype html")) {
            return HtmlGrid.read(file, budget);
        }
        if (lower.contains("<?xml") && lower.contains("workbook")) {
            throw BadFile.notATable(
                    "a workbook in the XML form of 2003",
                    "Open it in a spreadsheet program and save it as XLSX or CSV");
        }
        if (lower.startsWith("{\\rtf") || lower.contains("<?xml")) {
            throw BadFile.notATable("a text document", "Ask the seller for the spreadsheet itself");
        }
        return CsvGrid.read(file, budget);
    }

    private static boolean starts(byte[] head, int... bytes) {
        if (head.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((head[i] & 0xff) != bytes[i]) {
                return false;
            }
        }
        return true;
    }
}
