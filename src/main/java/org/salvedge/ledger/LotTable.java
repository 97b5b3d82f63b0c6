package org.salvedge.ledger;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Currency;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/** Lots: one row a purchase. */
final class LotTable extends Table<Lot> {
    final Column<Lot, LotId> lot = key("lot", Labels.LOT, "The shop's name for the lot", Lot::lot);
    final Column<Lot, String> supplier = required("supplier", Types.WORD, "Who sold it", Lot::supplier);
    final Column<Lot, LocalDate> boughtOn = required("bought_on", Types.DATE, "Day of purchase", Lot::boughtOn);
    final Column<Lot, Currency> currency =
            required("currency", Types.CURRENCY, "ISO 4217 code of the amounts in this row", Lot::currency);
    final Column<Lot, BigDecimal> rate =
            optional("rate", Types.RATE, "Book-currency units for one unit of the row's currency", Lot::rate);
    final Column<Lot, Money> price = required("price", Types.LOT_MONEY, "Paid to the seller", Lot::price);
    final Column<Lot, Money> premium =
            optional("premium", Types.LOT_MONEY, "Buyer's premium and auction fees", Lot::premium);
    final Column<Lot, Money> freight = optional("freight", Types.LOT_MONEY, "Transport in", Lot::freight);
    final Column<Lot, Money> otherCost =
            optional("other_cost", Types.LOT_MONEY, "Unrecoverable tax, pallets", Lot::otherCost);
    final Column<Lot, Quantity> minutes =
            optional("minutes", Types.QUANTITY, "Labour on the lot as a whole, minutes", Lot::minutes);
    final Column<Lot, LocalDate> receivedOn = optional("received_on", Types.DATE, "Day it arrived", Lot::receivedOn);
    final Column<Lot, Basis> basis =
            optional("basis", Types.oneOf(Basis.class), "How its landed cost was shared", Lot::basis);
    final Column<Lot, String> note = optional("note", Types.TEXT, "Anything else", Lot::note);

    LotTable() {
        super("lot", 'L', Lot.class);
    }

    @Override
    Lot fact(Values<Lot> v) {
        return new Lot(
                v.need(lot),
                v.need(supplier),
                v.need(boughtOn),
                v.need(currency),
                v.get(rate),
                v.need(price),
                v.get(premium),
                v.get(freight),
                v.get(otherCost),
                v.get(minutes),
                v.get(receivedOn),
                v.get(basis),
                v.get(note));
    }

    @Override
    LocalDate day(Lot lot) {
        return lot.boughtOn();
    }

    @Override
    String describe(Lot l) {
        return "lot " + l.lot();
    }

    @Override
    Currency money(ResultSet row, Codec codec) throws SQLException {
        return Currency.getInstance(row.getString(currency.index() + 2));
    }
}
