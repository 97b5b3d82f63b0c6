package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Field;
import org.salvedge.manifest.words.Folded;

/** Maker and model of a row: from columns of their own, from one they share, or from a description. */
final class NameReader {
    private static final String ASK_MODEL = "Ask the seller for the model number";
    private static final String ASK_MAKER = "Ask the seller who made it";

    private final Table table;
    private final Readers readers;

    NameReader(Table table, Readers readers) {
        this.table = table;
        this.readers = readers;
    }

    MakerModel read(Cell[] row) {
        List<MakerModel.Fault> faults = new ArrayList<>();
        Description description = description(row);
        String maker = maker(row, description, faults);
        String model = model(row, maker, description, faults);
        boolean asked = table.has(Field.MAKER) || table.has(Field.DESCRIPTION) || table.modelHoldsMaker();
        if (maker == null
                && asked
                && faults.stream().noneMatch(fault -> fault.advice().equals(ASK_MAKER))) {
            faults.add(new MakerModel.Fault(heading(Field.MAKER), null, "has no maker", ASK_MAKER));
        }
        return new MakerModel(maker, model, description, faults);
    }

    private @Nullable Description description(Cell[] row) {
        int column = table.column(Field.DESCRIPTION);
        if (column == Table.ABSENT && table.modelHoldsMaker()) {
            column = table.column(Field.MODEL);
        }
        if (column == Table.ABSENT || row[column].kind() != Cell.Kind.TEXT) {
            return null;
        }
        String text = row[column].shown();
        boolean counted = table.column(Field.QUANTITY) == Table.ABSENT;
        return readers.descriptions().read(counted ? text.substring(CountReader.leadingEnd(text)) : text);
    }

    private @Nullable String maker(Cell[] row, @Nullable Description description, List<MakerModel.Fault> faults) {
        int column = table.column(Field.MAKER);
        if (column != Table.ABSENT) {
            Cell cell = row[column];
            if (cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED) {
                faults.add(new MakerModel.Fault(
                        table.heading(column),
                        cell.shown(),
                        RowReader.damage(cell, "is an error value, no maker"),
                        ASK_MAKER));
                return null;
            }
            String text = oneLine(cell.shown());
            if (!text.isEmpty() && !readers.rowWords().isNone(text)) {
                return text;
            }
        }
        return description == null ? null : description.maker();
    }

    private @Nullable String model(
            Cell[] row, @Nullable String maker, @Nullable Description description, List<MakerModel.Fault> faults) {
        int column = table.column(Field.MODEL);
        if (column == Table.ABSENT || table.modelHoldsMaker()) {
            String model = description == null ? null : description.model();
            if (model == null) {
                faults.add(
                        new MakerModel.Fault(heading(Field.DESCRIPTION), found(row), "has no model number", ASK_MODEL));
            }
            return model;
        }
        Cell cell = row[column];
        String heading = table.heading(column);
        if (cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED) {
            faults.add(new MakerModel.Fault(
                    heading, cell.shown(), RowReader.damage(cell, "is an error value, no model number"), ASK_MODEL));
            return null;
        }
        if (cell.kind() == Cell.Kind.DATE) {
            faults.add(new MakerModel.Fault(
                    heading,
                    cell.shown(),
                    "is a model number that a spreadsheet program turned into a date",
                    ASK_MODEL));
            return null;
        }
        if (cell.hasLostDigits() || SerialReader.hasLostDigits(cell.shown())) {
            faults.add(new MakerModel.Fault(heading, cell.shown(), "is a model number that lost digits", ASK_MODEL));
            return null;
        }
        String text = oneLine(cell.shown());
        if (text.isEmpty() || readers.rowWords().isNone(text)) {
            String told = description == null ? null : description.model();
            if (told == null) {
                faults.add(new MakerModel.Fault(heading, text, "has no model number", ASK_MODEL));
            }
            return told;
        }
        if (DateText.isDate(text)) {
            faults.add(new MakerModel.Fault(
                    heading, text, "is a model number that a spreadsheet program turned into a date", ASK_MODEL));
        }
        return bareModel(text, maker);
    }

    /** A model's cell may repeat the maker, or add the size and other words. */
    private String bareModel(String text, @Nullable String maker) {
        String bare = text;
        if (maker != null && text.length() > maker.length() + 1) {
            boolean led = text.regionMatches(true, 0, maker, 0, maker.length()) && text.charAt(maker.length()) == ' ';
            bare = led ? text.substring(maker.length() + 1).strip() : text;
        }
        boolean wordy = bare.indexOf(' ') > 0
                && (Folded.wordsOf(bare).stream().anyMatch(readers.goods()::isSetWord)
                        || readers.sizes().findIn(bare) != null);
        String inside = wordy ? readers.descriptions().modelIn(bare) : null;
        return inside == null ? bare : inside;
    }

    private @Nullable String heading(Field field) {
        int column = table.column(field);
        return column == Table.ABSENT ? null : table.heading(column);
    }

    private @Nullable String found(Cell[] row) {
        int column = table.column(Field.DESCRIPTION);
        return column == Table.ABSENT ? null : row[column].shown();
    }

    static String oneLine(String text) {
        return text.indexOf('\n') < 0 && text.indexOf("  ") < 0 ? text : text.replaceAll("\\s+", " ");
    }
}
