package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PreviewTest {
    private static final String LIST = """
            Model,Maker,Size,Condition,Zebra,Price
            KX-55A,Kestrel,55,horizontal lines,x1,120.00
            KX-56A,Kestrel,5S,quizzled frobnications,=1+1,110.00
            OR-43,Orlan,43,no power,@SUM(A1),80.00
            """;

    private TestShop shop;
    private Path list;

    @BeforeEach
    void open(@TempDir Path folder) throws IOException {
        shop = new TestShop(Files.createDirectories(folder.resolve("shop")));
        list = Files.writeString(folder.resolve("list.csv"), LIST);
    }

    private JsonNode json(String... more) throws IOException {
        String[] args = new String[more.length + 4];
        args[0] = "preview";
        args[1] = list.toString();
        args[2] = "--format";
        args[3] = "json";
        System.arraycopy(more, 0, args, 4, more.length);
        shop.run(args);
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void aClaimThatCannotBeReadIsReportedOnceAndSoIsAMaker(@TempDir Path folder) throws IOException {
        list = folder.resolve("formulas.xlsx");
        try (XSSFWorkbook book = new XSSFWorkbook();
                OutputStream out = Files.newOutputStream(list)) {
            for (String pallet : new String[] {"Pallet 1", "Pallet 2"}) {
                Sheet sheet = book.createSheet(pallet);
                texts(sheet.createRow(0), "Brand", "Model", "Size", "Condition");
                texts(sheet.createRow(1), "Kestrel", "KX-55A", "55", "no power");
                Row bad = sheet.createRow(2);
                texts(bad, "", "KX-55A", "55", "");
                bad.createCell(0).setCellFormula("A1");
                bad.createCell(3).setCellFormula("1+1"); // neither is worked out
            }
            book.write(out);
        }
        JsonNode answer = json();
        assertThat(answer.get("sets")).hasSize(4);
        assertThat(answer.get("problems").findValuesAsText("column"))
                .containsExactlyInAnyOrder("Brand", "Condition", "Brand", "Condition");
        shop.run("preview", list.toString());
        assertThat(shop.out()).contains("read from 2 sheets, \"Pallet 1\" to \"Pallet 2\", of formulas.xlsx");
    }

    private static void texts(Row row, String... texts) {
        for (int c = 0; c < texts.length; c++) {
            row.createCell(c).setCellValue(texts[c]);
        }
    }

    @Test
    void whatWasTakenForWhatIsExplained() throws IOException {
        JsonNode explained = json("--explain");
        JsonNode columns = explained.get("tables").get(0).get("columns");
        assertThat(columns.get(0).get("field").asText()).isEqualTo("model");
        assertThat(columns.get(4).get("heading").asText()).isEqualTo("Zebra");
        assertThat(columns.get(4).get("field").isNull()).isTrue();
        JsonNode words = explained.get("words");
        assertThat(words.get(0).get("text").asText()).isEqualTo("quizzled frobnications");
        assertThat(words.get(0).get("sureness").asDouble()).isLessThan(0.5);
        assertThat(json().has("tables")).isFalse();
    }

    @Test
    void theLinesThatTeachHoldFromThenOn() throws IOException {
        shop.run("init");
        shop.run("preview", list.toString(), "--explain");
        assertThat(shop.out()).contains("\"Zebra\" = \"none\"", "\"quizzled frobnications\" = \"other\"");
        assertThat(json().get("sets").get(1).get("claimed").asText()).isEqualTo("other");

        Path settings = shop.folder().resolve("shop.toml");
        Files.writeString(
                settings,
                Files.readString(settings)
                        .replace("[columns]", "[columns]\n\"Zebra\" = \"serial\"")
                        .replace("[symptoms]", "[symptoms]\n\"quizzled frobnications\" = \"dim_patchy\""));

        JsonNode after = json();
        assertThat(after.get("sets").get(1).get("claimed").asText()).isEqualTo("dim_patchy");
        assertThat(after.get("sets").get(0).get("serial").asText()).isEqualTo("x1");
        assertThat(after.get("columns").get("serial").asText()).isEqualTo("Zebra");
    }

    @Test
    void aFieldThatIsNoneIsRefusedWithTheLine() throws IOException {
        shop.run("init");
        Path settings = shop.folder().resolve("shop.toml");
        Files.writeString(
                settings, Files.readString(settings).replace("[columns]", "[columns]\n\"Zebra\" = \"stripes\""));
        assertThat(shop.run("preview", list.toString())).isEqualTo(Status.REFUSED);
        assertThat(shop.err().replaceAll("\n +", " ")).contains("[columns], \"Zebra\"", "\"stripes\"", "serial");
    }

    @Test
    void theMarkedCopyTellsEachProblemBesideItsRowAndHoldsNoFormula(@TempDir Path folder) throws IOException {
        Path copy = folder.resolve("marked.xlsx");
        assertThat(shop.run("preview", list.toString(), "--marked", copy.toString()))
                .isEqualTo(Status.PROBLEMS);
        try (InputStream in = Files.newInputStream(copy);
                Workbook book = WorkbookFactory.create(in)) {
            Row bad = book.getSheetAt(0).getRow(2);
            assertThat(bad.getCell(2).getStringCellValue()).isEqualTo("5S");
            assertThat(bad.getCell(2).getCellStyle().getBorderLeft()).isEqualTo(BorderStyle.THICK);
            assertThat(bad.getCell(6).getStringCellValue()).startsWith("!! Size: \"5S\"");
            assertThat(book.getSheetAt(0).getRow(1).getCell(6)).isNull();
            for (Row row : book.getSheetAt(0)) {
                for (Cell cell : row) {
                    assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
                }
            }
            assertThat(bad.getCell(4).getStringCellValue()).isEqualTo("=1+1");
            assertThat(bad.getCell(4).getCellStyle().getQuotePrefixed()).isTrue();
        }
    }

    @Test
    void theMarkedCopyNeverReplacesAFile(@TempDir Path folder) throws IOException {
        Path there = Files.writeString(folder.resolve("there.xlsx"), "mine");
        assertThat(shop.run("preview", list.toString(), "--marked", there.toString()))
                .isEqualTo(Status.REFUSED);
        assertThat(there).hasContent("mine");
        assertThat(shop.run("preview", list.toString(), "--marked", "copy.csv")).isEqualTo(Status.USAGE);
    }

    @Test
    void theSameListGivesTheSameMarkedBytes(@TempDir Path folder) throws IOException {
        shop.run(
                "preview", list.toString(), "--marked", folder.resolve("a.xlsx").toString());
        shop.run(
                "preview", list.toString(), "--marked", folder.resolve("b.xlsx").toString());
        assertThat(folder.resolve("a.xlsx")).hasSameBinaryContentAs(folder.resolve("b.xlsx"));
    }

    @Test
    void problemsThatAreAlikeAreToldTogether() throws IOException {
        StringBuilder rows = new StringBuilder("Model,Maker,Size,Condition\n");
        for (int i = 0; i < 40; i++) {
            rows.append("KX-55A,Kestrel,").append(i % 2 == 0 ? "55" : "5S").append(",no power\n");
        }
        Files.writeString(list, rows);
        assertThat(shop.run("preview", list.toString())).isEqualTo(Status.PROBLEMS);
        String told = shop.err().replaceAll("\n +", " ");
        assertThat(told).contains("20 times, rows 3, 5, 7", "and 12 more", "\"5S\" ");
        assertThat(shop.err().lines().count()).isLessThan(6);
        assertThat(json().get("problems")).hasSize(20);
    }

    @Test
    void aProtectedWorkbookIsReadWithItsPassword(@TempDir Path folder) throws Exception {
        Path locked = locked(folder.resolve("locked.xlsx"), "opensesame");
        protectedIsRead(locked, "opensesame");
    }

    @Test
    void anOldProtectedWorkbookIsReadWithItsPassword() {
        protectedIsRead(
                Path.of("src", "test", "resources", "corpus", "tuning", "t84-password.xls")
                        .toAbsolutePath(),
                "letmein");
    }

    private void protectedIsRead(Path locked, String password) {
        assertThat(shop.run("preview", locked.toString())).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("needs a password");
        assertThat(shop.run("preview", locked.toString(), "--password", "wrong"))
                .isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("does not open with that password");
        assertThat(shop.run("preview", locked.toString(), "--password", password))
                .isLessThanOrEqualTo(Status.PROBLEMS);
        String with = shop.out();
        assertThat(shop.answering(password).run("preview", locked.toString())).isLessThanOrEqualTo(Status.PROBLEMS);
        assertThat(shop.out()).isEqualTo(with).contains("sets");
        assertThat(shop.questions()).containsExactly("Password of " + locked.getFileName() + ": ");
    }

    private static Path locked(Path file, String password) throws Exception {
        EncryptionInfo info = new EncryptionInfo(EncryptionMode.agile);
        Encryptor encryptor = info.getEncryptor();
        encryptor.confirmPassword(password);
        try (POIFSFileSystem files = new POIFSFileSystem();
                Workbook book = new XSSFWorkbook()) {
            String[] lines = LIST.split("\n");
            Sheet sheet = book.createSheet("List");
            for (int r = 0; r < lines.length; r++) {
                String[] fields = lines[r].split(",", -1);
                Row row = sheet.createRow(r);
                for (int c = 0; c < fields.length; c++) {
                    row.createCell(c).setCellValue(fields[c]);
                }
            }
            try (OutputStream out = encryptor.getDataStream(files)) {
                book.write(out);
            }
            try (OutputStream out = Files.newOutputStream(file)) {
                files.writeFilesystem(out);
            }
        }
        return file;
    }
}
