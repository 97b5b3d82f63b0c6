package org.salvedge.manifest;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Claim;

/** Columns whose headings say nothing known: symptoms and serials are told by what their cells hold. */
final class Unnamed {
    private static final Pattern SERIAL = Pattern.compile("(?=.*[0-9].*[0-9].*[0-9].*[0-9])[A-Za-z0-9-]{8,24}");
    private static final int LOOKED_AT = 200;
    private static final int FEWEST = 3;

    private Unnamed() {}

    static void take(Sheet sheet, Header header, List<Integer> rows, ClaimReader claims) {
        boolean wantsClaim = !header.has(Field.CLAIMED);
        boolean wantsSerial = !header.has(Field.SERIAL);
        if (!wantsClaim && !wantsSerial) {
            return;
        }
        int bestClaim = -1;
        int bestSerial = -1;
        double mostClaims = 0.5;
        double mostSerials = 0.7;
        for (int c = 0; c < sheet.width(); c++) {
            if (header.isTaken(c)) {
                continue;
            }
            int filled = 0;
            int said = 0;
            Set<String> serials = new HashSet<>();
            for (int i = 0; i < Math.min(LOOKED_AT, rows.size()); i++) {
                Cell cell = sheet.row(rows.get(i))[c];
                if (cell.kind() != Cell.Kind.TEXT || cell.origin() != Cell.Origin.OWN) {
                    continue;
                }
                filled++;
                String text = cell.shown();
                ClaimReader.Reading r = claims.read(text);
                said += r.claim().equals(Claim.OTHER) || r.words().isEmpty() ? 0 : 1;
                if (SERIAL.matcher(text).matches()) {
                    serials.add(text);
                }
            }
            if (filled < FEWEST) {
                continue;
            }
            if ((double) said / filled > mostClaims) {
                mostClaims = (double) said / filled;
                bestClaim = c;
            }
            if ((double) serials.size() / filled > mostSerials) {
                mostSerials = (double) serials.size() / filled;
                bestSerial = c;
            }
        }
        if (wantsClaim && bestClaim >= 0) {
            header.take(Field.CLAIMED, bestClaim);
        }
        if (wantsSerial && bestSerial >= 0) {
            header.take(Field.SERIAL, bestSerial);
        }
    }
}
