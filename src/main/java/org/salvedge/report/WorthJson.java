package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.LineWorth;
import org.salvedge.worth.LotWorth;
import org.salvedge.worth.PastBids;
import org.salvedge.worth.Predictive;
import org.salvedge.worth.turn.StopTable;

/** The answer to a buyer as other programs read it: keys are a contract. */
public final class WorthJson {
    private WorthJson() {}

    /** A map to be written by {@link JsonWriter}. */
    public static Map<String, @Nullable Object> of(Appraisal a) {
        LotWorth w = a.worth();
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("sets", w.sets());
        json.put("history", history(a));
        json.put("recovery", distribution(w.recovery()));
        Map<String, @Nullable Object> minutes = new LinkedHashMap<>();
        minutes.put("mean", w.minutes().mean());
        minutes.put("p10", w.minutes().quantile(0.1));
        minutes.put("p90", w.minutes().quantile(0.9));
        json.put("minutes", minutes);
        Map<String, @Nullable Object> bid = price(a.highestBid());
        bid.put("confidence", a.confidence());
        bid.put("target_return", a.targetReturn());
        json.put("highest_bid", bid);
        json.put("break_even_bid", price(a.breakEven()));
        json.put("at_price", at(a.atPrice()));
        List<Object> lines = new ArrayList<>();
        w.lines().forEach(l -> lines.add(line(l)));
        json.put("lines", lines);
        json.put("donors", DonorReport.json(w.donors()));
        json.put("notes", w.notes());
        return json;
    }

    /** The same with what stands beside the answer. */
    public static Map<String, @Nullable Object> of(Appraisal a, PastBids bids, StopTable stops) {
        Map<String, @Nullable Object> json = of(a);
        json.put("stops", StopReport.json(stops));
        Map<String, @Nullable Object> past = new LinkedHashMap<>();
        past.put("supplier", bids.supplier());
        past.put("kept", bids.kept());
        past.put("won", bids.won());
        past.put("limit_over_hammer", bids.limitOverHammer());
        boolean known = !bids.overWorth().isEmpty();
        past.put("hammer_over_mean_p10", known ? bids.overWorth().get(0) : null);
        past.put("hammer_over_mean_p50", known ? bids.overWorth().get(1) : null);
        past.put("hammer_over_mean_p90", known ? bids.overWorth().get(2) : null);
        json.put("bids", past);
        return json;
    }

    private static Map<String, @Nullable Object> history(Appraisal a) {
        Map<String, @Nullable Object> history = new LinkedHashMap<>();
        history.put("lots", a.worth().historyLots());
        history.put("sets", a.worth().historySets());
        history.put("lots_of_supplier", a.grounds().lotsOfSupplier());
        history.put("latest", a.grounds().latest());
        return history;
    }

    private static Map<String, @Nullable Object> distribution(Predictive p) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("mean", p.mean());
        json.put("sd", p.sd());
        for (int percent : new int[] {5, 10, 25, 50, 75, 90, 95}) {
            json.put((percent < 10 ? "p0" : "p") + percent, p.quantile(percent / 100.0));
        }
        return json;
    }

    private static Map<String, @Nullable Object> price(Optional<Money> price) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("price", price.orElse(null));
        return json;
    }

    private static @Nullable Object at(Appraisal.@Nullable AtPrice at) {
        if (at == null) {
            return null;
        }
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("price", at.price());
        json.put("outlay", at.outlay());
        json.put("profit_mean", at.profitMean());
        json.put("p_loss", at.pLoss());
        json.put("p10", at.p10());
        json.put("p50", at.p50());
        json.put("p90", at.p90());
        return json;
    }

    private static Map<String, @Nullable Object> line(LineWorth l) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("sheet", l.sheet());
        json.put("line", l.line());
        json.put("sets", l.sets());
        json.put("model", l.model());
        json.put("family", l.family());
        json.put("claimed", l.claimed());
        json.put("recovery_mean", l.recoveryMean());
        json.put("recovery_sd", l.recoverySd());
        json.put("p_saved", l.pSaved());
        json.put("minutes_mean", l.minutesMean());
        json.put("route", l.route());
        json.put("basis", l.basis());
        return json;
    }
}
