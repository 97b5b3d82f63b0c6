package org.salvedge.manifest.grid;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.hssf.eventusermodel.AbortableHSSFListener;
import org.apache.poi.hssf.eventusermodel.HSSFEventFactory;
import org.apache.poi.hssf.eventusermodel.HSSFRequest;
import org.apache.poi.hssf.eventusermodel.HSSFUserException;
import org.apache.poi.hssf.record.BOFRecord;
import org.apache.poi.hssf.record.BoolErrRecord;
import org.apache.poi.hssf.record.BoundSheetRecord;
import org.apache.poi.hssf.record.CellRecord;
import org.apache.poi.hssf.record.DateWindow1904Record;
import org.apache.poi.hssf.record.EOFRecord;
import org.apache.poi.hssf.record.ExtendedFormatRecord;
import org.apache.poi.hssf.record.FormatRecord;
import org.apache.poi.hssf.record.FormulaRecord;
import org.apache.poi.hssf.record.LabelRecord;
import org.apache.poi.hssf.record.LabelSSTRecord;
import org.apache.poi.hssf.record.MergeCellsRecord;
import org.apache.poi.hssf.record.NumberRecord;
import org.apache.poi.hssf.record.RKRecord;
import org.apache.poi.hssf.record.Record;
import org.apache.poi.hssf.record.SSTRecord;
import org.apache.poi.hssf.record.StringRecord;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.util.CellRangeAddress;
import org.jspecify.annotations.Nullable;

/** Workbooks of the older binary kind (BIFF8), record by record. */
final class XlsReader extends AbortableHSSFListener {
    private static final short GO_ON = 0;

    private final Budget budget;
    private final List<Sheet> sheets = new ArrayList<>();
    private final List<BoundSheetRecord> bound = new ArrayList<>();
    private final XlsFormats formats = new XlsFormats();
    private final List<String> shared = new ArrayList<>();
    private @Nullable SheetBuilder sheet;
    private boolean from1904;
    private int sheetIndex = -1;
    private int charts;
    private int row = -1;
    private int pendingColumn = -1;

    private XlsReader(Budget budget) {
        this.budget = budget;
    }

    /** @throws RuntimeException of many kinds on a hostile file */
    static Grid read(DirectoryNode root, @Nullable String password, Budget budget) throws IOException {
        XlsReader reader = new XlsReader(budget);
        HSSFRequest request = new HSSFRequest();
        request.addListenerForAllRecords(reader);
        String before = Biff8EncryptionKey.getCurrentUserPassword();
        Biff8EncryptionKey.setCurrentUserPassword(password);
        try {
            new HSSFEventFactory().abortableProcessWorkbookEvents(request, root);
        } catch (HSSFUserException e) {
            throw new IllegalStateException(e); // never thrown by this listener
        } finally {
            Biff8EncryptionKey.setCurrentUserPassword(before);
        }
        reader.charts = 0;
        reader.endSheet(); // a torn file may lack the last end mark
        if (reader.sheets.isEmpty()) {
            throw BadFile.torn("it holds no sheet");
        }
        return Grid.of("an XLS workbook", reader.sheets);
    }

    @Override
    public short abortableProcessRecord(Record record) {
        budget.take(0);
        switch (record.getSid()) {
            case BoundSheetRecord.sid -> bound.add((BoundSheetRecord) record);
            case DateWindow1904Record.sid -> from1904 = ((DateWindow1904Record) record).getWindowing() == 1;
            case FormatRecord.sid -> formats.add((FormatRecord) record);
            case ExtendedFormatRecord.sid -> formats.add((ExtendedFormatRecord) record);
            case SSTRecord.sid -> addShared((SSTRecord) record);
            case BOFRecord.sid -> startSheet((BOFRecord) record);
            case EOFRecord.sid -> endSheet();
            default -> {
                if (sheet != null) {
                    inSheet(record, sheet);
                }
            }
        }
        return GO_ON;
    }

    private void addShared(SSTRecord record) {
        for (int i = 0; i < record.getNumUniqueStrings(); i++) {
            String text = CellText.clean(
                    record.getString(i).getString(), budget.limits().textLength());
            shared.add(text);
            budget.text(text);
        }
    }

    private void startSheet(BOFRecord record) {
        if (record.getType() == BOFRecord.TYPE_WORKBOOK) {
            return;
        }
        if (sheet != null) {
            charts++; // it lies inside the sheet
            return;
        }
        sheetIndex++;
        if (record.getType() == BOFRecord.TYPE_WORKSHEET) {
            BoundSheetRecord entry = sheetIndex < bound.size() ? bound.get(sheetIndex) : null;
            String name = entry == null ? "" : CellText.clean(entry.getSheetname(), 100);
            boolean visible = entry == null || !entry.isHidden() && !entry.isVeryHidden();
            sheet = new SheetBuilder(name, visible, from1904, formats.list(), budget);
            row = -1;
        }
    }

    private void endSheet() {
        if (charts > 0) {
            charts--;
        } else if (sheet != null) {
            sheets.add(sheet.build());
            sheet = null;
        }
    }

    private void inSheet(Record record, SheetBuilder into) {
        if (record instanceof CellRecord cell) {
            if (cell.getRow() != row) {
                row = cell.getRow();
                into.startRow(row + 1);
            }
            addCell(cell, into);
        } else if (record instanceof LabelRecord label) {
            if (label.getRow() != row) {
                row = label.getRow();
                into.startRow(row + 1);
            }
            into.text(label.getColumn(), label.getValue());
        } else if (record instanceof StringRecord text) {
            if (pendingColumn >= 0) {
                into.text(pendingColumn, text.getString());
                pendingColumn = -1;
            }
        } else if (record instanceof MergeCellsRecord merges) {
            for (int i = 0; i < merges.getNumAreas(); i++) {
                CellRangeAddress area = merges.getAreaAt(i);
                into.merge(area.getFirstRow() + 1, area.getFirstColumn(), area.getLastRow() + 1, area.getLastColumn());
            }
        }
    }

    private void addCell(CellRecord cell, SheetBuilder into) {
        int column = cell.getColumn();
        int style = cell.getXFIndex();
        if (cell instanceof LabelSSTRecord label) {
            int index = label.getSSTIndex();
            if (index < 0 || index >= shared.size()) {
                into.damaged(column, Integer.toString(index), "points to a shared text that is not in the file");
            } else {
                into.cleanText(column, shared.get(index));
            }
        } else if (cell instanceof NumberRecord number) {
            into.number(column, number.getValue(), style);
        } else if (cell instanceof RKRecord number) {
            into.number(column, number.getRKNumber(), style);
        } else if (cell instanceof BoolErrRecord value) {
            if (value.isBoolean()) {
                into.text(column, value.getBooleanValue() ? "TRUE" : "FALSE");
            } else {
                into.error(column, error(value.getErrorValue()));
            }
        } else if (cell instanceof FormulaRecord formula) {
            addFormula(formula, column, style, into);
        }
    }

    private void addFormula(FormulaRecord formula, int column, int style, SheetBuilder into) {
        pendingColumn = -1;
        if (formula.hasCachedResultString()) {
            pendingColumn = column;
        } else {
            switch (formula.getCachedResultTypeEnum()) {
                case BOOLEAN -> into.text(column, formula.getCachedBooleanValue() ? "TRUE" : "FALSE");
                case ERROR -> into.error(column, error((byte) formula.getCachedErrorValue()));
                case NUMERIC -> into.number(column, formula.getValue(), style);
                default -> {}
            }
        }
    }

    private static String error(byte code) {
        return FormulaError.isValidCode(code & 0xff) ? FormulaError.forInt(code).getString() : "#VALUE!";
    }
}
