package org.salvedge.worth;

import java.util.List;
import java.util.Map;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;

/** Everything estimated from a history, each part with its own uncertainty. Immutable once made. */
final class Parts implements java.io.Serializable {
    final Records records;
    final double hourly;
    final FaultMix mix;
    final DamageModel damage;
    final SuccessModel success;
    final PriceModel sales;
    final PriceModel stripping;
    final Handling handling;
    final Takings takings;
    final Levels levels;
    final Families families;
    final Asking asking;
    /** Factor by which lots differ more than the parts say. */
    final double widening;

    final Rest rest;
    /** What donors of boards save. */
    final Harvest harvest;

    Parts(History history, List<Part> parts, int asOf, double hourly, Map<String, String> familyTable) {
        this.hourly = hourly;
        PartPrices prices = new PartPrices(history, parts);
        records = new Records(history, prices, asOf, hourly / 60);
        mix = new FaultMix(records);
        damage = new DamageModel(records);
        sales = PriceModel.ofSales(records, hourly);
        success = new SuccessModel(records, sales, hourly);
        stripping = PriceModel.ofStripping(records, hourly, sales);
        handling = new Handling(records, hourly);
        takings = new Takings(records, hourly);
        levels = new Levels(records, damage.model(), success.model(), sales, handling, mix, takings.missingUsual);
        LotCheck check = new LotCheck(this);
        widening = check.widening();
        rest = new Rest(records, check, levels.hazard(), hourly);
        families = new Families(records, familyTable);
        asking = new Asking(this);
        harvest = new Harvest(records, prices, parts, hourly);
    }
}
