package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFCell;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.CellRangeAddress;
import org.jspecify.annotations.Nullable;

/** The old binary workbook (BIFF8), and workbooks behind a password. */
final class XlsGrid {
    private static final long LARGEST = 60L << 20;

    private XlsGrid() {}

    static List<Sheet> read(Path file, @Nullable String password, Budget budget) throws IOException {
        if (Files.size(file) > LARGEST) {
            throw BadFile.tooLarge("is too large for an old workbook");
        }
        try (POIFSFileSystem fs = new POIFSFileSystem(file.toFile(), true)) {
            if (fs.getRoot().hasEntryCaseInsensitive("EncryptionInfo")) {
                return decrypted(fs, password, budget);
            }
            if (fs.getRoot().hasEntryCaseInsensitive("WordDocument")) {
                throw BadFile.notATable("a text document", "Ask the seller for the spreadsheet itself");
            }
            Biff8EncryptionKey.setCurrentUserPassword(password);
            try (HSSFWorkbook book = new HSSFWorkbook(fs)) {
                return sheets(book, budget);
            } finally {
                Biff8EncryptionKey.setCurrentUserPassword(null);
            }
        } catch (EncryptedDocumentException e) {
            throw needsPassword(password);
        }
    }

    private static BadFile needsPassword(@Nullable String given) {
        return new BadFile(
                given == null ? "needs a password" : "does not open with that password",
                "Give it with --password, or ask the seller for an open copy");
    }

    private static List<Sheet> decrypted(POIFSFileSystem fs, @Nullable String password, Budget budget)
            throws IOException {
        Path copy = Files.createTempFile("salvedge", ".open");
        try {
            Decryptor d = Decryptor.getInstance(new EncryptionInfo(fs));
            if (!d.verifyPassword(password == null ? Decryptor.DEFAULT_PASSWORD : password)) {
                throw needsPassword(password);
            }
            try (InputStream in = d.getDataStream(fs)) {
                Files.copy(in, copy, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            }
            return XlsxGrid.read(copy, budget);
        } catch (java.security.GeneralSecurityException e) {
            throw needsPassword(password);
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    private static List<Sheet> sheets(HSSFWorkbook book, Budget budget) {
        List<Sheet> sheets = new ArrayList<>();
        List<NumberFormat> formats = new ArrayList<>();
        for (int i = 0; i < book.getNumCellStyles(); i++) {
            var style = book.getCellStyleAt(i);
            formats.add(NumberFormat.of(style.getDataFormat(), style.getDataFormatString()));
        }
        boolean from1904 = book.getInternalWorkbook().isUsing1904DateWindowing();
        for (int s = 0; s < book.getNumberOfSheets(); s++) {
            if (book.getSheetVisibility(s) == SheetVisibility.VISIBLE) {
                sheets.add(sheet(book.getSheetAt(s), formats, from1904, budget));
            }
        }
        return sheets;
    }

    private static Sheet sheet(HSSFSheet from, List<NumberFormat> formats, boolean from1904, Budget budget) {
        SheetBuilder sheet =
                new SheetBuilder(CellText.clean(from.getSheetName(), 100), true, from1904, formats, budget);
        for (Row row : from) {
            sheet.startRow(row.getRowNum() + 1);
            for (Cell c : row) {
                HSSFCell cell = (HSSFCell) c;
                CellType type =
                        cell.getCellType() == CellType.FORMULA ? cell.getCachedFormulaResultType() : cell.getCellType();
                int at = cell.getColumnIndex();
                switch (type) {
                    case STRING -> sheet.text(at, cell.getStringCellValue());
                    case NUMERIC ->
                        sheet.number(
                                at,
                                cell.getNumericCellValue(),
                                cell.getCellStyle().getIndex());
                    case BOOLEAN -> sheet.text(at, cell.getBooleanCellValue() ? "TRUE" : "FALSE");
                    case ERROR ->
                        sheet.error(
                                at,
                                org.apache.poi.ss.usermodel.FormulaError.isValidCode(cell.getErrorCellValue())
                                        ? org.apache.poi.ss.usermodel.FormulaError.forInt(cell.getErrorCellValue())
                                                .getString()
                                        : "#ERR");
                    default -> {}
                }
            }
        }
        for (CellRangeAddress m : from.getMergedRegions()) {
            sheet.merge(m.getFirstRow() + 1, m.getFirstColumn(), m.getLastRow() + 1, m.getLastColumn());
        }
        return sheet.build();
    }
}
