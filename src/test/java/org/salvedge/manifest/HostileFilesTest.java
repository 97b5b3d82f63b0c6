package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** What cannot be read is refused with the file's name and what it really is; nothing is left behind. */
class HostileFilesTest {
    private static final Path TUNING = Path.of("src", "test", "resources", "corpus", "tuning");
    private static final String SHEET = "xl/worksheets/sheet1.xml";

    private final ManifestReader reader =
            new ManifestReader(Settings.defaults(Currency.getInstance("EUR"), ZoneOffset.UTC));

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "t71-missing-sheet.xlsx, is missing",
        "t75-swelling.xlsx, swells beyond reason when unpacked",
        "t76-binary-workbook.xlsb, is an XLSB workbook",
        "t77-picture.xls, is a PNG picture",
        "t78-letter.xlsx, is a word processor's document",
        "t79-torn.xls, is damaged",
        "t82-numbers.csv, holds no header",
        "t84-password.xls, needs a password",
        "t86-mark-only.csv, holds no header",
        "t87-chance.csv, is binary data"
    })
    void theRefusalSaysWhatTheFileIs(String name, String reason) {
        assertThatThrownBy(() -> reader.read(TUNING.resolve(name), null))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith(name)
                .hasMessageContaining(reason);
    }

    @ParameterizedTest
    @CsvSource({
        "'%PDF-1.7 x', is a PDF document",
        "'{\\rtf1 x}', is a rich-text document",
        "'{\"a\": [1]}', is JSON",
        "'SQLite format 3 x', is an SQLite database",
        "'Rar!x', is a RAR archive",
        "'<?xml version=\"1.0\"?><a/>', is an XML file of another kind",
        "'<html><p>no table</p></html>', is a web page without a table",
        "'MIME-Version: 1.0', is a web archive"
    })
    void theFirstBytesTellAndNotTheName(String text, String reason) throws IOException {
        Path file = Files.writeString(folder.resolve("list.xlsx"), text);
        assertThatThrownBy(() -> reader.read(file, null))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("list.xlsx")
                .hasMessageContaining(reason);
    }

    @Test
    void whatIsNoPlainFileIsNeverWaitedFor() throws Exception {
        Path pipe = folder.resolve("pipe.csv");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor(10, TimeUnit.SECONDS))
                .isTrue();
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), pipe);
        for (Path file : List.of(pipe, link, folder, folder.resolve("none.csv"), Path.of("/dev/zero"))) {
            assertThatThrownBy(() -> reader.read(file, null)).isInstanceOf(Refused.class);
        }
    }

    @Test
    void anEntityReachesNoOtherFile() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "SECRET");
        Path file = workbook(
                "<!DOCTYPE w [<!ENTITY x SYSTEM \"" + secret.toUri() + "\">]>",
                "<row r=\"1\"><c t=\"inlineStr\"><is><t>Model</t></is></c><c t=\"inlineStr\"><is><t>Maker</t></is></c></row>"
                        + "<row r=\"2\"><c t=\"inlineStr\"><is><t>&x;</t></is></c></row>");
        assertThatThrownBy(() -> reader.read(file, null))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("document type declaration")
                .hasMessageNotContaining("SECRET");
    }

    @Test
    void partsThatAreNestedBeyondReasonAreRefused() throws IOException {
        Path file = workbook("", "<a>".repeat(5_000));
        assertThatThrownBy(() -> reader.read(file, null)).isInstanceOf(Refused.class);
    }

    /** Backtracking over long cells once took minutes for what is read in a second. */
    @Test
    @Timeout(20)
    void longTextsCostNoMoreThanTheirLength() throws IOException {
        String cell = "55\" 43 - no power KX55A x 12 cm not Bild 1.234 - - / ".repeat(600);
        StringBuilder rows = new StringBuilder("Description;Fault;Price;Model;Serial;Qty;Size\n");
        for (int i = 0; i < 60; i++) {
            rows.append((cell + ";").repeat(6)).append(cell).append('\n');
        }
        Path file = Files.writeString(folder.resolve("long.csv"), rows);
        Manifest manifest = reader.read(file, null);
        assertThat(manifest.columns()).containsEntry("claimed", "Fault");
        assertThat(manifest.problems()).isNotEmpty();
    }

    @Test
    void noCopyOfTheFileIsLeftBehind() throws IOException {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        List<Path> before = copies(temporary);
        reader.read(TUNING.resolve("t01-letterhead.xlsx"), null);
        assertThatThrownBy(() -> reader.read(TUNING.resolve("t79-torn.xls"), null))
                .isInstanceOf(Refused.class);
        assertThat(copies(temporary)).isSubsetOf(before);
    }

    private static List<Path> copies(Path temporary) throws IOException {
        try (Stream<Path> files = Files.list(temporary)) {
            return files.filter(f -> f.getFileName().toString().matches("salvedge-.*[.](copy|unlocked)"))
                    .toList();
        }
    }

    private Path workbook(String beforeSheet, String rows) throws IOException {
        Path file = folder.resolve("made.xlsx");
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            put(
                    zip,
                    "[Content_Types].xml",
                    "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"/>");
            put(
                    zip,
                    "xl/_rels/workbook.xml.rels",
                    "<Relationships><Relationship Id=\"r1\" Type=\"x/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>");
            put(
                    zip,
                    "xl/workbook.xml",
                    "<workbook xmlns:r=\"r\"><sheets><sheet name=\"S\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>");
            put(zip, SHEET, beforeSheet + "<worksheet><sheetData>" + rows + "</sheetData></worksheet>");
        }
        return file;
    }

    private static void put(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
    }
}
