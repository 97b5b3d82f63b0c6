package org.salvedge.worth;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;

/** Everything estimated from a history, each part with its own uncertainty. Immutable once made. */
final class Parts implements java.io.Serializable {
    final Outline records;
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
    final Evidence evidence;
    /** Factor by which lots differ more than the parts say. */
    final double widening;

    final Rest rest;
    /** What donors of boards save. */
    final Harvest harvest;

    Parts(History history, List<Part> parts, int asOf, double hourly, Map<String, String> familyTable) {
        this.hourly = hourly;
        PartPrices prices = new PartPrices(history, parts);
        Records r = new Records(history, prices, asOf, hourly / 60);
        records = new Outline(r);
        mix = new FaultMix(r);
        ForkJoinTask<DamageModel> glass = ForkJoinPool.commonPool().submit(() -> new DamageModel(r));
        sales = PriceModel.ofSales(r, hourly);
        success = new SuccessModel(r, sales, hourly);
        stripping = PriceModel.ofStripping(r, hourly, sales);
        handling = new Handling(r, hourly);
        takings = new Takings(r, hourly);
        damage = glass.join();
        levels = new Levels(r, damage.model(), success.model(), sales, handling, mix, takings.missingUsual);
        LotCheck check = new LotCheck(this, r);
        widening = check.widening();
        rest = new Rest(r, check, levels.hazard(), hourly);
        families = new Families(r, familyTable);
        asking = new Asking(r, sales);
        evidence = new Evidence(r);
        harvest = new Harvest(r, prices, parts, hourly);
    }
}
