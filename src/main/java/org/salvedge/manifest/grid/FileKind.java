package org.salvedge.manifest.grid;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** What a file really is, told by its first bytes and never by its name. */
enum FileKind {
    PACKED,
    COMPOUND,
    XML_TABLE,
    FLAT_ODS,
    WEB_PAGE,
    TEXT;

    private static final String SAVE = "Ask the seller for a spreadsheet";
    private static final String UNPACK = "Unpack it and name the spreadsheet in it";

    /** @param magic first bytes, one char a byte */
    private record Known(String magic, String name, String advice) {}

    private static final List<Known> OTHERS = List.of(
            new Known("%PDF", "a PDF document", SAVE),
            new Known("\u0089PNG", "a PNG picture", SAVE),
            new Known("\u00ff\u00d8\u00ff", "a JPEG picture", SAVE),
            new Known("GIF8", "a GIF picture", SAVE),
            new Known("BM\u0000", "a bitmap picture", SAVE),
            new Known("II*\u0000", "a TIFF picture", SAVE),
            new Known("MM\u0000*", "a TIFF picture", SAVE),
            new Known("RIFF", "a picture, a sound or a film", SAVE),
            new Known("\u001f\u008b", "a gzip archive", UNPACK),
            new Known("BZh", "a bzip2 archive", UNPACK),
            new Known("\u00fd7zXZ", "an xz archive", UNPACK),
            new Known("7z\u00bc\u00af", "a 7z archive", UNPACK),
            new Known("Rar!", "a RAR archive", UNPACK),
            new Known("(\u00b5/\u00fd", "a zstd archive", UNPACK),
            new Known("{\\rtf", "a rich-text document", SAVE),
            new Known("SQLite format 3", "an SQLite database", SAVE),
            new Known("PAR1", "a Parquet file", SAVE),
            new Known("ARROW1", "an Arrow file", SAVE),
            new Known("\u007fELF", "a program", SAVE),
            new Known("MZ\u0090", "a program", SAVE),
            new Known("\u00ca\u00fe\u00ba\u00be", "a program", SAVE),
            new Known("ID;P", "a SYLK table", "Open it and save it as XLSX or CSV"),
            new Known("TABLE\r\n0,1", "a DIF table", "Open it and save it as XLSX or CSV"),
            new Known("\u0000\u0000\u0002\u0000", "a worksheet of the eighties", "Open it and save it as XLSX or CSV"),
            new Known("\u0009\u0000\u0004\u0000", "an Excel 2 worksheet", "Open it and save it as XLSX"),
            new Known("\u0009\u0002\u0006\u0000", "an Excel 3 worksheet", "Open it and save it as XLSX"),
            new Known("\u0009\u0004\u0006\u0000", "an Excel 4 worksheet", "Open it and save it as XLSX"),
            new Known("\u0009\b", "a bare Excel 5 stream", "Open it and save it as XLSX"),
            new Known("MIME-Version:", "a web archive or a mail", "Open it and save it as XLSX"),
            new Known("From: ", "a mail", "Save the attached spreadsheet and name that"),
            new Known("Received: ", "a mail", "Save the attached spreadsheet and name that"));

    /**
     * @param head the first bytes, some thousands
     * @throws BadFile if it is known to be something else than a table
     */
    static FileKind of(byte[] head) {
        String bytes = new String(head, StandardCharsets.ISO_8859_1);
        if (bytes.startsWith("PK\u0003\u0004") || bytes.startsWith("PK\u0005\u0006")) {
            return PACKED;
        }
        if (bytes.startsWith("\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1")) {
            return COMPOUND;
        }
        for (Known known : OTHERS) {
            if (bytes.startsWith(known.magic)) {
                throw BadFile.notATable(known.name, known.advice);
            }
        }
        return ofText(bytes);
    }

    private static FileKind ofText(String bytes) {
        String text = withoutMark(bytes).stripLeading();
        String lower = text.toLowerCase(Locale.ROOT);
        if (lower.startsWith("mime-version:")) {
            throw BadFile.notATable("a web archive", "Open it and save it as XLSX");
        }
        if (text.startsWith("{\"") || text.startsWith("[{") || text.startsWith("{\n") || text.startsWith("{\r")) {
            throw BadFile.notATable("JSON", SAVE);
        }
        if (!text.startsWith("<")) {
            requireText(bytes);
            return TEXT;
        }
        if (lower.contains("<html")
                || lower.contains("<table") && !lower.contains("spreadsheet")
                || lower.startsWith("<!doctype html")) {
            return WEB_PAGE;
        }
        if (text.contains("urn:schemas-microsoft-com:office:spreadsheet")) {
            return XML_TABLE;
        }
        if (text.contains("urn:oasis:names:tc:opendocument:xmlns:office") && text.contains("document")) {
            return FLAT_ODS;
        }
        if (lower.startsWith("<?xml")
                || lower.startsWith("<!doctype")
                || lower.matches("(?s)<[a-z][\\w:.-]*[\\s/>].*")) {
            throw BadFile.notATable("an XML file of another kind", SAVE);
        }
        requireText(bytes);
        return TEXT;
    }

    /** Drops a byte order mark, and the zero bytes of UTF-16 so that its markup can be told. */
    private static String withoutMark(String bytes) {
        if (bytes.startsWith("\u00ef\u00bb\u00bf")) {
            return bytes.substring(3);
        }
        if (bytes.startsWith("\u00ff\u00fe") || bytes.startsWith("\u00fe\u00ff")) {
            return bytes.substring(2).replace("\0", "");
        }
        return bytes;
    }

    /** Refuses what is plainly binary: many control bytes that no text of any encoding in use has. */
    private static void requireText(String bytes) {
        long controls = bytes.chars()
                .filter(c -> c < ' ' && c != 0 && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != 0x1a)
                .count();
        long zeros = bytes.chars().filter(c -> c == 0).count();
        boolean wide = zeros > bytes.length() / 4;
        if (controls > 8 + bytes.length() / 50
                || !wide && zeros > 16 + bytes.length() / 20
                || zeros == bytes.length()) {
            throw BadFile.notATable("binary data of an unknown kind", SAVE);
        }
    }
}
