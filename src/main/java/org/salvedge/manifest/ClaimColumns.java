package org.salvedge.manifest;

import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.Field;
import org.salvedge.manifest.words.RowWords;
import org.salvedge.shop.Claim;

/** What a row claims: all its columns of state, fault and remarks together, or what its description says. */
final class ClaimColumns {
    /** @param text the seller's words; null = none */
    record Result(Claim claim, @Nullable String text, double sureness) {}

    private final Table table;
    private final Readers readers;

    ClaimColumns(Table table, Readers readers) {
        this.table = table;
        this.readers = readers;
    }

    Result read(Cell[] row, @Nullable Description description) {
        StringBuilder words = new StringBuilder();
        for (int column : table.claimColumns()) {
            Cell cell = row[column];
            String text = cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED ? "" : cell.shown();
            if (!text.isEmpty() && !RowWords.isRule(text)) {
                words.append(words.isEmpty() ? "" : "; ").append(text);
            }
        }
        if (words.isEmpty() && description != null) {
            return ofDescription(row, description);
        }
        return of(words.toString());
    }

    private Result of(String text) {
        ClaimReader.Reading reading = readers.claims().read(text);
        return new Result(reading.claim(), text.isEmpty() ? null : text, reading.sureness());
    }

    /** The words behind maker, model and size; the whole text where what it claims stands elsewhere in it. */
    private Result ofDescription(Cell[] row, Description description) {
        int column = table.column(Field.DESCRIPTION);
        String whole = row[column == Table.ABSENT ? table.column(Field.MODEL) : column].shown();
        if (description.rest().isEmpty()) {
            ClaimReader.Reading all = readers.claims().read(whole);
            boolean says = !all.matched().isEmpty() && !all.claim().equals(Claim.OTHER);
            return says ? new Result(all.claim(), whole, all.sureness()) : of("");
        }
        ClaimReader.Reading rest = readers.claims().read(description.rest());
        ClaimReader.Reading all = readers.claims().read(whole);
        boolean elsewhere = rest.matched().isEmpty() && !all.matched().isEmpty();
        return elsewhere
                ? new Result(all.claim(), whole, all.sureness())
                : new Result(rest.claim(), description.rest(), rest.sureness());
    }
}
