package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A lot's manifest with what stands behind it: families by number in the catalogue. */
final class Listing {
    final Supplier supplier;
    final int day; // since the shop's first day
    final int[] family;
    final int[] claim;
    final List<@Nullable String> model;
    final long[] asking;

    private Listing(
            Supplier supplier, int day, int[] family, int[] claim, List<@Nullable String> model, long[] asking) {
        this.supplier = supplier;
        this.day = day;
        this.family = family;
        this.claim = claim;
        this.model = model;
        this.asking = asking;
    }

    int sets() {
        return family.length;
    }

    /** @param newModels share of sets to be of families, or of model numbers, that the history has not */
    static Listing draw(Supplier supplier, int day, List<Family> families, Market market, double newModels, Dice dice) {
        double[] frequency = new double[families.size()];
        double[] reserved = new double[families.size()];
        for (int f = 0; f < frequency.length; f++) {
            Family family = families.get(f);
            double weight = family.frequency(day) * Math.pow(family.price() / 180, supplier.taste());
            // A lot holds many of some families and none of others.
            double chunk = dice.gamma(0.4, 1);
            frequency[f] = family.reserve() ? 0 : weight * chunk;
            reserved[f] = family.reserve() ? chunk : 0;
        }
        double[] claims = supplier.claims().copy();
        for (int c = 0; c < claims.length; c++) {
            claims[c] *= dice.gamma(0.5, 1);
        }
        int n = (int) Math.max(25, Math.min(260, Math.round(dice.gamma(4, supplier.lotSize()))));
        int[] family = new int[n];
        int[] claim = new int[n];
        List<@Nullable String> model = new ArrayList<>(n);
        long[] asking = new long[n];
        for (int i = 0; i < n; i++) {
            boolean unseen = dice.chance(newModels);
            family[i] = unseen && dice.chance(0.5) ? dice.pick(reserved) : dice.pick(frequency);
            Family is = families.get(family[i]);
            claim[i] = dice.pick(claims);
            model.add(
                    dice.chance(supplier.unlisted())
                            ? null
                            : unseen && !is.reserve() ? is.name() + "0" + dice.whole(100, 130) : number(is, dice));
            double stated = supplier.asking()
                    * Math.pow(market.price(is, day), 0.85)
                    * Math.max(0.3, 1 + supplier.askingNoise() * dice.student(4));
            asking[i] =
                    supplier.asking() == 0 || dice.chance(0.03) ? -1 : 100 * Math.max(5, 5 * Math.round(stated / 5));
        }
        return new Listing(supplier, day, family, claim, model, asking);
    }

    private static String number(Family family, Dice dice) {
        int i = (int) (family.models().size() * Math.pow(dice.uniform(), 1.7));
        return family.models().get(i);
    }

    Offer offer(List<Family> families, int firstDay) {
        List<OfferedSet> sets = new ArrayList<>(sets());
        for (int i = 0; i < sets(); i++) {
            Family f = families.get(family[i]);
            sets.add(new OfferedSet(f.maker(), model.get(i), f.inches(), Words.CLAIMS.get(claim[i]), asking[i]));
        }
        return new Offer(supplier.name(), firstDay + day, sets);
    }
}
