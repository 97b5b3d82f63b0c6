package org.salvedge.worth;

import java.util.Map;
import org.salvedge.shop.History;

/** Everything estimated from a history, each part with its own uncertainty. Immutable once made. */
final class Parts {
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

    Parts(History history, int asOf, double hourly, Map<String, String> familyTable) {
        this.hourly = hourly;
        records = new Records(history, asOf, hourly / 60);
        mix = new FaultMix(records);
        damage = new DamageModel(records);
        success = new SuccessModel(records);
        sales = PriceModel.ofSales(records, hourly);
        stripping = PriceModel.ofStripping(records, hourly, sales);
        handling = new Handling(records, hourly);
        takings = new Takings(records, hourly);
        levels = new Levels(records, damage.model(), success.model(), sales.model(), mix);
        families = new Families(records, familyTable);
    }
}
