package org.salvedge.worth.study;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/**
 * What a shop's record looks like, to see at a glance whether the invented ones resemble real ones.
 *
 * @param fixMinutes median over attempts with a fix
 * @param net mean net recovery of sets that are gone, currency units
 * @param open share of arrived sets neither decided nor returned nor lost
 */
record Portrait(
        int lots, int sets, double yield, double fixMinutes, double price, double net, double glass, double open) {
    static Portrait of(ShopSnapshot shop) {
        History h = shop.history();
        Timeline timeline = new Timeline();
        int decided = 0;
        int saved = 0;
        int arrived = 0;
        int aside = 0;
        int gone = 0;
        double net = 0;
        for (int s = 0; s < h.sets(); s++) {
            h.walk(s, timeline);
            arrived += h.arrived(s) ? 1 : 0;
            decided += timeline.decided() ? 1 : 0;
            saved += timeline.saved() ? 1 : 0;
            aside += h.arrived(s) && timeline.aside() ? 1 : 0;
            if (h.arrived(s) && timeline.state() == Timeline.State.GONE) {
                gone++;
                net += Ledgers.net(h, s, shop.labourRate());
            }
        }
        int none = h.fixes().find("none");
        int broken = h.faults().find("panel_broken");
        double[] minutes = IntStream.range(0, h.attempts())
                .filter(a -> h.attemptFix(a) != none && h.attemptFixMicros(a) >= 0)
                .mapToDouble(a -> h.attemptFixMicros(a) / 1e6)
                .sorted()
                .toArray();
        double price = IntStream.range(0, h.exits())
                .filter(e -> h.exitKind(e) == ExitKind.SOLD.ordinal() && h.exitGrade(e) >= 0)
                .mapToDouble(e -> h.exitGross(e) / 100.0)
                .average()
                .orElse(0);
        double glass = IntStream.range(0, h.attempts())
                .filter(a -> h.attemptFault(a) == broken)
                .map(h::attemptSet)
                .distinct()
                .count();
        return new Portrait(
                h.lots(),
                h.sets(),
                saved / (double) decided,
                minutes.length == 0 ? 0 : minutes[minutes.length / 2],
                price,
                net / gone,
                glass / arrived,
                (arrived - decided - aside) / (double) arrived);
    }

    /** Lots, sets, then the other figures. */
    String line() {
        return String.format(
                Locale.ROOT,
                "%3d lots %5d sets  yield %.2f  fix %3.0f min  price %4.0f  net %5.1f  glass %.2f  open %.2f",
                lots,
                sets,
                yield,
                fixMinutes,
                price,
                net,
                glass,
                open);
    }

    /** Prints a few shops of each world, with the true worth of a set of each lot on offer and its spread. */
    public static void main(String[] args) {
        for (World world : World.values()) {
            System.out.println(world.title());
            for (long seed = Study.DEV_SEED; seed < Study.DEV_SEED + 5; seed++) {
                InventedShop shop = new InventedShop(world, seed, 8);
                StringBuilder lots = new StringBuilder();
                for (InventedShop.Candidate c : shop.candidates()) {
                    Forecast f = shop.oracle(c, 500, seed);
                    int n = c.offer().sets().size();
                    double sd = (f.quantile(0.84) - f.quantile(0.16)) / 2;
                    lots.append(String.format(Locale.ROOT, " %.0f(%.0f%%)", f.mean() / n, 100 * sd / f.mean()))
                            .append(c.spoiled() ? "*" : "");
                }
                System.out.println("  " + of(shop.snapshot()).line() + "  offered" + lots);
            }
        }
    }

    /** Mean over shops of one figure. */
    static double mean(List<Portrait> shops, java.util.function.ToDoubleFunction<Portrait> of) {
        return shops.stream().mapToDouble(of).average().orElseThrow();
    }
}
