package org.salvedge.worth.study;

import java.util.HashMap;
import java.util.Map;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/**
 * The spreadsheet that a careful buyer keeps: mean net recovery of sets that are gone, by family and claim; where a cell has
 * fewer than eight sets, by family; then by size and claim; then over all.
 */
final class FamilyClaimMeans implements Forecaster {
    private static final int ENOUGH = 8;

    private static final class Cell {
        private int n;
        private double sum;
        private double squares;

        private void add(double x) {
            n++;
            sum += x;
            squares += x * x;
        }

        private double mean() {
            return sum / n;
        }

        private double variance() {
            return Math.max(0, squares / n - mean() * mean());
        }
    }

    @Override
    public String name() {
        return "family x claim means";
    }

    @Override
    public Fitted fit(ShopSnapshot shop) {
        History h = shop.history();
        Map<String, Cell> cells = new HashMap<>();
        Map<String, String> familyOf = new HashMap<>();
        Timeline timeline = new Timeline();
        for (int s = 0; s < h.sets(); s++) {
            String family = h.families().text(h.setFamily(s));
            familyOf.put(h.models().text(h.setModel(s)), family);
            h.walk(s, timeline);
            if (!h.arrived(s) || timeline.state() != Timeline.State.GONE) {
                continue;
            }
            double net = Ledgers.net(h, s, shop.labourRate());
            String claim = h.claims().text(h.setClaimed(s));
            for (String key : keys(family, h.setInches(s) / 1e6, claim)) {
                cells.computeIfAbsent(key, k -> new Cell()).add(net);
            }
        }
        return lot -> {
            double mean = 0;
            double variance = 0;
            for (OfferedSet set : lot.sets()) {
                String model = set.model() == null ? "unknown" : set.model();
                Cell cell = null;
                for (String key : keys(familyOf.getOrDefault(model, "?"), set.inches(), set.claimed())) {
                    Cell found = cells.get(key);
                    if (found != null && (found.n >= ENOUGH || key.isEmpty())) {
                        cell = found;
                        break;
                    }
                }
                if (cell != null) {
                    mean += cell.mean();
                    variance += cell.variance();
                }
            }
            return Forecast.normal(mean, Math.sqrt(variance));
        };
    }

    /** From the narrowest cell to the widest. */
    private static String[] keys(String family, double inches, String claim) {
        return new String[] {family + "|" + claim, family, Math.round(inches) + "\"|" + claim, ""};
    }
}
