package org.salvedge.manifest;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Field;
import org.salvedge.shop.Quantity;

/** Reads the rows of one table: which are sets, what each says, what is wrong with it. */
final class RowReader {
    private final Table table;
    private final Readers readers;
    private final Findings findings;
    private final RowSorter sorter;
    private Cell[] before = new Cell[0];

    RowReader(Table table, Readers readers, Findings findings) {
        this.table = table;
        this.readers = readers;
        this.findings = findings;
        this.sorter = new RowSorter(table, readers);
    }

    /** @param fields of the row's record; -1 where the format has no records */
    void read(Cell[] row, int number, int fields) {
        RowSorter.Kind kind = sorter.sort(row);
        switch (kind) {
            case PASSED_OVER -> {}
            case OTHER_GOODS ->
                findings.problem(number, null, sorter.label(row), "is no television set", "It is left out of the sets");
            case UNCLEAR ->
                findings.problem(
                        number,
                        null,
                        sorter.label(row),
                        "cannot be told for a television set",
                        "Compare the row with the seller's file");
            case SET -> {
                repeatDittos(row);
                if (fitsHeader(row, number, fields)) {
                    readSet(row, number);
                }
                before = row;
            }
        }
    }

    /** Reports a record of more or fewer fields than the header; false where its values do not fit where they stand. */
    private boolean fitsHeader(Cell[] row, int number, int fields) {
        int wanted = table.header().fields();
        boolean extra = false;
        for (int c = Math.max(0, wanted); c < row.length && fields > wanted; c++) {
            extra |= !row[c].isBlank();
        }
        if (fields < 0 || fields >= wanted && !extra) {
            return true;
        }
        boolean fits = sorter.misfits(row) == 0;
        findings.problem(
                number,
                null,
                sorter.label(row),
                "has " + fields + " fields where the header has " + wanted,
                fits
                        ? "Compare the row with the seller's file"
                        : "Mend the row in the file; it is left out of the sets");
        return fits;
    }

    private void repeatDittos(Cell[] row) {
        for (int c = 0; c < row.length && c < before.length; c++) {
            if (row[c].kind() == Cell.Kind.TEXT && readers.rowWords().isDitto(row[c].shown())) {
                row[c] = before[c];
            }
        }
    }

    private void readSet(Cell[] row, int number) {
        Reading<Integer> count = count(row);
        Integer sets = count.value();
        if (sets == null) {
            problem(number, Field.QUANTITY, row, count);
            return;
        }
        MakerModel names = new NameReader(table, readers).read(row);
        for (MakerModel.Fault fault : names.faults()) {
            findings.problem(number, fault.column(), fault.found(), fault.problem(), fault.advice());
        }
        Quantity inches = inches(row, number, names);
        var claim = new ClaimColumns(table, readers).read(row, names.description());
        reportDamagedClaims(row, number);
        var price = table.prices().read(row, sets);
        if (price.problem() != null) {
            int column = table.prices().usedColumn(row);
            findings.problem(number, table.heading(column), row[column].shown(), price.problem(), price.advice());
        }
        List<@Nullable String> serials = serials(row, number, sets);
        for (int i = 0; i < sets; i++) {
            findings.add(new ListedSet(
                    findings.sheetName(),
                    number,
                    names.maker(),
                    names.model(),
                    inches,
                    i < serials.size() ? serials.get(i) : null,
                    claim.claim(),
                    claim.text(),
                    claim.sureness(),
                    price.value()));
        }
    }

    /** What cannot be read must not pass for a set of which nothing is said. */
    private void reportDamagedClaims(Cell[] row, int number) {
        for (int column : table.claimColumns()) {
            Cell cell = row[column];
            if (cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED) {
                findings.problem(
                        number,
                        table.heading(column),
                        cell.shown(),
                        damage(cell, "is an error value, no fault"),
                        "Ask the seller what is wrong with the set");
            }
        }
    }

    private void problem(int number, Field field, Cell[] row, Reading<?> reading) {
        String problem = reading.problem();
        if (problem != null) {
            int column = table.column(field);
            findings.problem(number, table.heading(column), row[column].shown(), problem, reading.advice());
        }
    }

    private Reading<Integer> count(Cell[] row) {
        int column = table.column(Field.QUANTITY);
        if (column != Table.ABSENT) {
            return CountReader.read(row[column]);
        }
        int description = table.column(Field.DESCRIPTION);
        return Reading.of(description == Table.ABSENT ? 1 : CountReader.leading(row[description].shown()));
    }

    private @Nullable Quantity inches(Cell[] row, int number, MakerModel names) {
        int column = table.column(Field.INCHES);
        Description description = names.description();
        if (column != Table.ABSENT) {
            Reading<Quantity> size = readers.sizes().read(row[column], table.unit());
            if (size.problem() != null) {
                problem(number, Field.INCHES, row, size);
            } else if (size.value() == null) {
                Quantity told = description == null ? null : description.inches();
                if (told != null) {
                    return told;
                }
                findings.problem(
                        number, table.heading(column), null, "has no screen size", "Look it up by the model number");
            }
            return size.value();
        }
        if (description != null && description.inches() != null) {
            return description.inches();
        }
        if (table.descriptionHoldsSizes()) {
            findings.problem(number, null, sorter.label(row), "has no screen size", "Look it up by the model number");
        }
        return null; // a size that the model number seems to hold would be a guess
    }

    private List<@Nullable String> serials(Cell[] row, int number, int sets) {
        int column = table.column(Field.SERIAL);
        if (column == Table.ABSENT) {
            return List.of();
        }
        Cell cell = row[column];
        SerialReader.Serials found = readers.serials().read(cell, sets);
        if (found.lost() != null) {
            findings.problem(
                    number,
                    table.heading(column),
                    found.lost(),
                    "is a serial that lost digits when it was stored as a number",
                    "Read it from the rear label");
        } else if (cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED) {
            findings.problem(
                    number,
                    table.heading(column),
                    cell.shown(),
                    damage(cell, "is no serial"),
                    "Read it from the rear label");
        }
        List<@Nullable String> serials = found.serials();
        if (!serials.isEmpty() && serials.size() != sets && cell.kind() != Cell.Kind.DATE) {
            findings.problem(
                    number,
                    table.heading(column),
                    cell.shown(),
                    serials.size() < sets
                            ? "has " + (serials.size() == 1 ? "one serial" : serials.size() + " serials") + " for "
                                    + sets + " sets"
                            : "has " + serials.size() + " serials for " + (sets == 1 ? "one set" : sets + " sets"),
                    "Ask the seller; sets left over have no serial");
        }
        checkRepeats(serials, number, column);
        return serials;
    }

    private void checkRepeats(List<@Nullable String> serials, int number, int column) {
        for (String serial : serials) {
            if (serial != null) {
                String place = findings.metBefore(serial, number);
                if (place != null) {
                    findings.problem(
                            number,
                            table.heading(column),
                            serial,
                            "is a serial met before, in " + place,
                            "Look at both rear labels");
                }
            }
        }
    }

    static String damage(Cell cell, String otherwise) {
        String damage = cell.damage();
        return damage == null ? otherwise : damage;
    }
}
