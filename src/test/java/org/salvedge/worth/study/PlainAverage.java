package org.salvedge.worth.study;

import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/** What people do: mean net recovery of all sets that are gone, times the number of sets; spread as if sets were independent. */
final class PlainAverage implements Forecaster {
    @Override
    public String name() {
        return "plain average";
    }

    @Override
    public Fitted fit(ShopSnapshot shop) {
        History h = shop.history();
        Timeline timeline = new Timeline();
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (int s = 0; s < h.sets(); s++) {
            h.walk(s, timeline);
            if (h.arrived(s) && timeline.state() == Timeline.State.GONE) {
                double net = Ledgers.net(h, s, shop.labourRate());
                sum += net;
                squares += net * net;
                n++;
            }
        }
        double mean = sum / n;
        double variance = squares / n - mean * mean;
        return lot -> Forecast.normal(
                mean * lot.sets().size(), Math.sqrt(variance * lot.sets().size()));
    }
}
