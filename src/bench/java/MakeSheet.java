import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;

/** Writes a seller's list of invented sets, twelve columns, shared strings. usage: MakeSheet FILE ROWS [SEED] */
public final class MakeSheet {
    private static final List<String> HEADER = List.of(
            "Pos", "Brand", "Model", "Size", "Serial", "Fault", "Remarks", "Grade", "Qty", "Unit price", "Received", "Pallet");
    private static final List<String> MAKERS = List.of("Polestone", "Sundrake", "Vantrek", "Dunmarrow", "Lumibrak");
    private static final List<String> FAULTS = List.of("no power", "vertical lines", "untested", "cracked screen", "customer return", "no sound", "boot loop");
    private static final List<String> REMARKS = List.of("", "stand missing", "box torn", "remote included", "");
    private static final int[] SIZES = {32, 43, 50, 55, 65, 75};

    public static void main(String[] args) throws Exception {
        int rows = Integer.parseInt(args[1]);
        Random random = new Random(args.length > 2 ? Long.parseLong(args[2]) : 1);
        try (SXSSFWorkbook book = new SXSSFWorkbook(null, 500, false, true); OutputStream out = Files.newOutputStream(Path.of(args[0]))) {
            Sheet sheet = book.createSheet("Manifest");
            CellStyle date = style(book, "dd/mm/yyyy");
            CellStyle money = style(book, "#,##0.00");
            Row head = sheet.createRow(0);
            for (int c = 0; c < HEADER.size(); c++) head.createCell(c).setCellValue(HEADER.get(c));
            for (int r = 1; r <= rows; r++) set(sheet.createRow(r), r, random, date, money);
            book.write(out);
        }
    }

    private static void set(Row row, int n, Random random, CellStyle date, CellStyle money) {
        int kind = random.nextInt(90);
        int size = SIZES[kind % SIZES.length];
        String maker = MAKERS.get(kind % MAKERS.size());
        row.createCell(0).setCellValue(n);
        row.createCell(1).setCellValue(maker);
        row.createCell(2).setCellValue(maker.substring(0, 2).toUpperCase(java.util.Locale.ROOT) + size + "K" + kind);
        row.createCell(3).setCellValue(size + "\"");
        row.createCell(4).setCellValue("S%08d%03d".formatted(n, random.nextInt(1000)));
        row.createCell(5).setCellValue(FAULTS.get(random.nextInt(FAULTS.size())));
        row.createCell(6).setCellValue(REMARKS.get(random.nextInt(REMARKS.size())));
        row.createCell(7).setCellValue(String.valueOf((char) ('A' + random.nextInt(4))));
        row.createCell(8).setCellValue(1);
        row.createCell(9).setCellValue(random.nextInt(2_000, 90_000) / 100.0);
        row.getCell(9).setCellStyle(money);
        row.createCell(10).setCellValue(45_000 + random.nextInt(900));
        row.getCell(10).setCellStyle(date);
        row.createCell(11).setCellValue("P" + n / 30);
    }

    private static CellStyle style(SXSSFWorkbook book, String format) {
        CellStyle style = book.createCellStyle();
        style.setDataFormat(book.createDataFormat().getFormat(format));
        return style;
    }
}
