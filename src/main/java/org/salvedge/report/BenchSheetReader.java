package org.salvedge.report;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.NumberToTextConverter;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jspecify.annotations.Nullable;
import org.salvedge.report.BenchSheet.Field;
import org.salvedge.shop.Refused;

/** Reads back a bench sheet that came from {@link BenchSheet}: what was written into each row, as text. */
public final class BenchSheetReader {
    private static final long LARGEST_FILE = 20_000_000;
    private static final long MOST_UNPACKED = 16L << 20;
    private static final int MOST_PARTS = 1000;

    private BenchSheetReader() {}

    /**
     * One row with a unit. Null = the cell is empty.
     *
     * @param row as a spreadsheet program shows it, from 1
     * @param asOfEntry number of the latest entry about the set when the sheet was written
     */
    public record Filled(
            int row,
            String unit,
            long asOfEntry,
            @Nullable String fault,
            @Nullable String fix,
            @Nullable String diagnosisMinutes,
            @Nullable String fixMinutes,
            @Nullable String partsCost,
            @Nullable String passed,
            @Nullable String grade,
            @Nullable String soakHours,
            @Nullable String safetyTested,
            @Nullable String ownerDataReset,
            @Nullable String place,
            @Nullable String waitingFor,
            @Nullable String note) {

        /** Whether anything of a turn at the bench was written in. */
        public boolean hasTurn() {
            return fault != null
                    || fix != null
                    || diagnosisMinutes != null
                    || fixMinutes != null
                    || partsCost != null
                    || passed != null
                    || grade != null
                    || soakHours != null
                    || safetyTested != null
                    || ownerDataReset != null
                    || note != null;
        }
    }

    /** @throws Refused if the file is no bench sheet */
    public static List<Filled> read(Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > LARGEST_FILE) {
                throw new Refused(file.getFileName() + " is no bench sheet: not a file, or too large for one");
            }
            requireModest(file);
            try (OPCPackage zip = OPCPackage.open(new File(file.toString()), PackageAccess.READ);
                    XSSFWorkbook book = new XSSFWorkbook(zip)) {
                XSSFSheet sheet = book.getSheet(BenchSheet.NAME);
                if (sheet == null) {
                    throw new Refused(file.getFileName() + " has no sheet \"" + BenchSheet.NAME
                            + "\"; it is not from `salvedge sheet`");
                }
                return rows(sheet, columns(file, sheet));
            }
        } catch (IOException | OpenXML4JException | RuntimeException e) {
            if (e instanceof Refused refused) {
                throw refused;
            }
            throw new Refused(file.getFileName() + " cannot be read as a workbook (XLSX): " + e.getMessage());
        }
    }

    /** POI holds every part whole in memory, so what comes out of the package is counted before; what it says of itself may be false. */
    private static void requireModest(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            byte[] buffer = new byte[1 << 16];
            long unpacked = 0;
            Enumeration<? extends ZipEntry> parts = zip.entries();
            for (int n = 1; parts.hasMoreElements(); n++) {
                try (InputStream in = zip.getInputStream(parts.nextElement())) {
                    for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                        unpacked += read;
                        if (unpacked > MOST_UNPACKED || n > MOST_PARTS) {
                            throw new Refused(
                                    file.getFileName() + " is no bench sheet: too large for one when unpacked");
                        }
                    }
                }
            }
        }
    }

    /** Columns by their heading, so that moved columns do no harm. */
    private static Map<Field, Integer> columns(Path file, XSSFSheet sheet) {
        Map<Field, Integer> at = new EnumMap<>(Field.class);
        Row header = sheet.getRow(BenchSheet.HEADER_ROW);
        if (header != null) {
            for (Cell cell : header) {
                for (Field c : Field.values()) {
                    if (c.heading.equals(text(cell))) {
                        at.put(c, cell.getColumnIndex());
                    }
                }
            }
        }
        for (Field c : Field.values()) {
            if (!at.containsKey(c)) {
                throw new Refused(file.getFileName() + ", sheet \"" + BenchSheet.NAME + "\", row "
                        + (BenchSheet.HEADER_ROW + 1) + ": the column \"" + c.heading
                        + "\" is gone; write the sheet again with `salvedge sheet`");
            }
        }
        return at;
    }

    private static List<Filled> rows(XSSFSheet sheet, Map<Field, Integer> at) {
        List<Filled> filled = new ArrayList<>();
        for (Row row : sheet) {
            if (row.getRowNum() <= BenchSheet.HEADER_ROW) {
                continue;
            }
            Map<Field, String> cells = new EnumMap<>(Field.class);
            for (Map.Entry<Field, Integer> e : at.entrySet()) {
                String text = text(row.getCell(e.getValue()));
                if (text != null) {
                    cells.put(e.getKey(), text);
                }
            }
            String unit = cells.get(Field.UNIT);
            if (unit != null) {
                filled.add(filled(row.getRowNum() + 1, unit, cells));
            }
        }
        return filled;
    }

    private static Filled filled(int row, String unit, Map<Field, String> cells) {
        String asOf = cells.getOrDefault(Field.AS_OF, "0");
        return new Filled(
                row,
                unit,
                asOf.matches("[0-9]{1,18}") ? Long.parseLong(asOf) : 0,
                cells.get(Field.FAULT),
                cells.get(Field.FIX),
                cells.get(Field.DIAGNOSIS),
                cells.get(Field.FIX_MINUTES),
                cells.get(Field.PARTS),
                cells.get(Field.PASSED),
                cells.get(Field.GRADE),
                cells.get(Field.SOAK),
                cells.get(Field.SAFETY),
                cells.get(Field.RESET),
                cells.get(Field.PLACE),
                cells.get(Field.WAITING),
                cells.get(Field.NOTE));
    }

    /** The stored value; a formula by its cached result; null where nothing is written. */
    private static @Nullable String text(@Nullable Cell cell) {
        if (cell == null) {
            return null;
        }
        if (cell instanceof XSSFCell own && own.getCellType() == CellType.FORMULA && own.getRawValue() == null) {
            // A library that wrote it without working it out; POI would take it for 0.
            throw new Refused(
                    "sheet \"" + BenchSheet.NAME + "\", cell " + cell.getAddress()
                            + " is a formula without a stored value. Write the value itself, or save the sheet in a spreadsheet program");
        }
        CellType type = cell.getCellType() == CellType.FORMULA ? cell.getCachedFormulaResultType() : cell.getCellType();
        String text = switch (type) {
            case STRING -> cell.getStringCellValue().strip();
            case NUMERIC -> NumberToTextConverter.toText(cell.getNumericCellValue());
            case BOOLEAN -> cell.getBooleanCellValue() ? "yes" : "no";
            default -> "";
        };
        return text.isEmpty() ? null : type == CellType.BOOLEAN ? text.toLowerCase(Locale.ROOT) : text;
    }
}
