package org.salvedge.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Currency;
import org.salvedge.shop.Claim;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Sets: one row a television. */
final class UnitTable extends Table<TvSet> {
    final Column<TvSet, UnitId> unit = key("unit", Labels.UNIT, "The shop's label on the set", TvSet::unit);
    final Column<TvSet, LotId> lot = required("lot", Labels.LOT, "The lot it came with", TvSet::lot);
    final Column<TvSet, String> sheet = optional("sheet", Types.WORD, "Sheet of the seller's manifest", TvSet::sheet);
    final Column<TvSet, Integer> line =
            optional("line", Types.WHOLE, "Line of that sheet; empty where it was not on the manifest", TvSet::line);
    final Column<TvSet, String> maker =
            required("maker", Types.WORD, "Maker; unknown where it could not be read", TvSet::maker);
    final Column<TvSet, String> model = required(
            "model", Types.WORD, "Model number on the rear label; unknown where it could not be read", TvSet::model);
    final Column<TvSet, String> family = required("family", Types.WORD, "Model family", TvSet::family);
    final Column<TvSet, String> serial = optional("serial", Types.TEXT, "Serial number", TvSet::serial);
    final Column<TvSet, Quantity> inches = optional("inches", Types.QUANTITY, "Screen diagonal, inches", TvSet::inches);
    final Column<TvSet, String> listedMaker = optional(
            "listed_maker", Types.WORD, "Maker on the manifest, where it turned out another", TvSet::listedMaker);
    final Column<TvSet, String> listedModel = optional(
            "listed_model", Types.WORD, "Model on the manifest, where it turned out another", TvSet::listedModel);
    final Column<TvSet, Quantity> listedInches = optional(
            "listed_inches",
            Types.QUANTITY,
            "Diagonal on the manifest, where it turned out another",
            TvSet::listedInches);
    final Column<TvSet, Integer> rows = optional("rows", Types.WHOLE, "Vertical resolution, pixels", TvSet::rows);
    final Column<TvSet, String> panel =
            optional("panel", Types.WORD, "Model number on the panel's own label", TvSet::panel);
    final Column<TvSet, Claim> claimed =
            required("claimed", Labels.CLAIM, "Symptom class the seller claimed", TvSet::claimed);
    final Column<TvSet, String> claimedText =
            optional("claimed_text", Types.TEXT, "The seller's own words", TvSet::claimedText);
    final Column<TvSet, Money> asking = optional(
            "asking", Types.LOT_MONEY, "The seller's stated or retail value, in the lot's currency", TvSet::asking);
    final Column<TvSet, Boolean> incomplete =
            optional("incomplete", Types.YES_NO, "Stand, remote or another part is missing", TvSet::incomplete);
    final Column<TvSet, String> place = optional("place", Types.WORD, "Where it stands: shelf, bay", TvSet::place);
    final Column<TvSet, String> waitingFor =
            optional("waiting_for", Types.WORD, "The part it waits for", TvSet::waitingFor);
    final Column<TvSet, LocalDate> expectedOn =
            optional("expected_on", Types.DATE, "When that part is due", TvSet::expectedOn);
    final Column<TvSet, Boolean> arrived =
            required("arrived", Types.YES_NO, "false: on the manifest, not on the pallet", TvSet::arrived);
    final Column<TvSet, Money> landedCost =
            optional("landed_cost", Types.MONEY, "Share of the lot's landed cost, book currency", TvSet::landedCost);

    UnitTable() {
        super("unit", 'U', TvSet.class);
    }

    @Override
    TvSet fact(Values<TvSet> v) {
        return new TvSet(
                v.need(unit),
                v.need(lot),
                v.get(sheet),
                v.get(line),
                v.need(maker),
                v.need(model),
                v.need(family),
                v.get(serial),
                v.get(inches),
                v.get(listedMaker),
                v.get(listedModel),
                v.get(listedInches),
                v.get(rows),
                v.get(panel),
                v.need(claimed),
                v.get(claimedText),
                v.get(asking),
                v.get(incomplete),
                v.get(place),
                v.get(waitingFor),
                v.get(expectedOn),
                v.need(arrived),
                v.get(landedCost));
    }

    @Override
    LocalDate day(TvSet set) {
        throw new IllegalStateException("a set's day is its lot's");
    }

    @Override
    String describe(TvSet set) {
        return "set " + set.unit();
    }

    @Override
    Currency money(ResultSet row, Codec codec) throws SQLException {
        row.getLong(asking.index() + 2);
        return row.wasNull() ? codec.book() : codec.lotCurrencies().of(row.getInt(lot.index() + 2));
    }
}
