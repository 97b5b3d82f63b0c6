package org.salvedge.ledger;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.StringJoiner;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;

/**
 * Sales of some days with everything that was done to their sets.
 *
 * @param sales that stand, in order of their entries
 * @param attempts of their sets, on whatever day
 * @param comebacks of their sets, on whatever day
 */
public record SoldSets(List<Exit> sales, List<Attempt> attempts, List<Comeback> comebacks) {
    public SoldSets {
        sales = List.copyOf(sales);
        attempts = List.copyOf(attempts);
        comebacks = List.copyOf(comebacks);
    }

    /** @param upTo entries behind this one are not seen */
    static SoldSets of(Store store, LocalDate first, LocalDate last, long upTo) throws SQLException {
        String stands = "entry <= " + upTo + " AND NOT EXISTS (SELECT 1 FROM supersede WHERE old = entry AND new <= "
                + upTo + ")";
        String sold = "\"on\" BETWEEN " + first.toEpochDay() + " AND " + last.toEpochDay() + " AND exit = "
                + ExitKind.SOLD.ordinal() + " AND " + stands;
        // One search through all exits; the rest is found by number.
        String[] found = found(store, sold);
        String ofThese = "unit IN (" + found[1] + ") AND " + stands;
        return new SoldSets(
                facts(store.where(Tables.EXITS, "entry IN (" + found[0] + ")")),
                facts(store.where(Tables.ATTEMPTS, ofThese)),
                facts(store.where(Tables.COMEBACKS, ofThese)));
    }

    /** The entries of the sales and the numbers of their sets, each as a list with commas. */
    private static String[] found(Store store, String sold) throws SQLException {
        StringJoiner entries = new StringJoiner(",");
        StringJoiner units = new StringJoiner(",");
        try (PreparedStatement select =
                        store.connection().prepareStatement("SELECT entry, unit FROM exit WHERE " + sold);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                entries.add(row.getString(1));
                units.add(row.getString(2));
            }
        }
        return new String[] {entries.toString(), units.toString()};
    }

    private static <F extends org.salvedge.shop.Fact> List<F> facts(List<Stored<F>> rows) {
        return rows.stream().map(Stored::fact).toList();
    }
}
