package org.salvedge.manifest;

import java.util.regex.Pattern;
import org.salvedge.manifest.grid.Cell;

/** What a row under a header is, before it is read as a set. */
final class RowKind {
    private static final Pattern TOTAL = Pattern.compile(
            "^(?:(?:sub|grand|zwischen|gesamt|page|pallet|lot|end|carried|carry|brought) ?)*(?:totals?|totale?s?|subtotals?|sum|summe|zwischensumme|gesamtsumme|gesamt|endsumme|ubertrag|uebertrag|somme|sous total|total general|report|a reporter|suma|subtotal|suma y sigue|average|avg|mean|durchschnitt|mittelwert|moyenne|promedio|media|brought forward|carried forward|balance|netto|brutto|mwst|vat|iva|tva)\\b.*");
    private static final Pattern RULE = Pattern.compile("[-=_*.~—–─━\\s]+");

    private RowKind() {}

    static boolean isTotal(Cell[] cells) {
        for (Cell c : cells) {
            if (c.kind() == Cell.Kind.TEXT && c.origin() == Cell.Origin.OWN) {
                String plain = Plain.of(c.shown());
                if (plain.length() <= 40 && TOTAL.matcher(plain).matches()) {
                    return true;
                }
            }
        }
        return false;
    }

    static boolean isRule(Cell[] cells) {
        boolean any = false;
        for (Cell c : cells) {
            if (!c.isBlank()) {
                any = true;
                if (c.isNumber() || !RULE.matcher(c.shown()).matches()) {
                    return false;
                }
            }
        }
        return any;
    }

    /** Cells that hold something of their own. */
    static int own(Cell[] cells) {
        int n = 0;
        for (Cell c : cells) {
            n += c.isBlank() || c.origin() != Cell.Origin.OWN ? 0 : 1;
        }
        return n;
    }
}
