import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Date;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Writes the books of a JSON list with Apache POI: XLS, XLSX, XLSX streamed with inline strings, XLSX under a password. */
public final class PoiBook {
    public static void main(String[] args) throws Exception {
        for (JsonNode job : new ObjectMapper().readTree(new File(args[0]))) {
            File file = new File(job.get("path").asText());
            boolean old = file.getName().endsWith(".xls") || "xls".equals(job.path("kind").asText());
            try (Workbook book = old ? new HSSFWorkbook() : job.path("stream").asBoolean() ? new SXSSFWorkbook() : new XSSFWorkbook()) {
                write(book, job);
                XSSFWorkbook x = book instanceof XSSFWorkbook w ? w : book instanceof SXSSFWorkbook w ? w.getXSSFWorkbook() : null;
                if (x != null) x.getProperties().getCoreProperties().setCreated(Optional.of(Date.from(Instant.parse("2026-01-01T00:00:00Z"))));
                save(book, file, job.path("password").asText());
            }
        }
    }

    private static void save(Workbook book, File file, String password) throws Exception {
        if (password.isEmpty() || book instanceof HSSFWorkbook) {
            Biff8EncryptionKey.setCurrentUserPassword(password.isEmpty() ? null : password);
            try (OutputStream out = new FileOutputStream(file)) {
                book.write(out);
            }
            Biff8EncryptionKey.setCurrentUserPassword(null);
            return;
        }
        try (POIFSFileSystem poifs = new POIFSFileSystem(); OutputStream out = new FileOutputStream(file)) {
            Encryptor lock = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
            lock.confirmPassword(password);
            try (OutputStream inner = lock.getDataStream(poifs)) {
                book.write(inner);
            }
            poifs.writeFilesystem(out);
        }
    }

    private static void write(Workbook book, JsonNode job) {
        Map<String, CellStyle> styles = new HashMap<>();
        int at = 0;
        for (JsonNode s : job.get("sheets")) {
            Sheet sheet = book.createSheet(s.get("name").asText());
            book.setSheetHidden(at++, s.get("hidden").asBoolean());
            int r = 0;
            for (JsonNode cells : s.get("rows")) {
                boolean blank = true;
                for (JsonNode v : cells) blank &= v.isNull();
                int n = r++;
                if (blank) continue;
                Row row = sheet.createRow(n);
                int c = 0;
                for (JsonNode v : cells) {
                    int col = c++;
                    if (!v.isNull()) fill(book, row.createCell(col), v, styles);
                }
            }
            for (JsonNode m : s.get("merges")) sheet.addMergedRegion(CellRangeAddress.valueOf(m.asText()));
            for (JsonNode h : s.get("hiddenRows")) sheet.getRow(h.asInt() - 1).setZeroHeight(true);
            for (JsonNode h : s.get("hiddenCols")) sheet.setColumnHidden(CellReference.convertColStringToIndex(h.asText()), true);
        }
        while (book.isSheetHidden(book.getActiveSheetIndex())) book.setActiveSheet(book.getActiveSheetIndex() + 1);
        if (job.path("evaluate").asBoolean()) book.getCreationHelper().createFormulaEvaluator().evaluateAll();
    }

    private static void fill(Workbook book, Cell cell, JsonNode v, Map<String, CellStyle> styles) {
        if (v.isTextual()) cell.setCellValue(v.asText());
        else if (v.isBoolean()) cell.setCellValue(v.asBoolean());
        else if (v.isNumber()) cell.setCellValue(v.asDouble());
        else if (v.has("date")) cell.setCellValue(LocalDateTime.parse(v.get("date").asText() + "T00:00:00"));
        else if (v.has("f")) cell.setCellFormula(v.get("f").asText());
        else if (v.has("err")) cell.setCellErrorValue(FormulaError.forString(v.get("err").asText()).getCode());
        else if (v.has("rich")) {
            StringBuilder all = new StringBuilder();
            for (JsonNode t : v.get("rich")) all.append(t.asText());
            RichTextString rich = book.getCreationHelper().createRichTextString(all.toString());
            rich.applyFont(0, v.get("rich").get(0).asText().length(), book.createFont());
            cell.setCellValue(rich);
        } else if (v.get("v").isTextual()) cell.setCellValue(v.get("v").asText());
        else cell.setCellValue(v.get("v").asDouble());
        if (v.has("fmt")) {
            cell.setCellStyle(styles.computeIfAbsent(v.get("fmt").asText(), f -> {
                CellStyle style = book.createCellStyle();
                style.setDataFormat(book.createDataFormat().getFormat(f));
                return style;
            }));
        }
    }
}
