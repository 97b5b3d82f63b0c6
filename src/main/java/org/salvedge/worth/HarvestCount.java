package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Text;

/**
 * Counts, lot by lot, the donors and the sets that need a board, pairs them so that the pairs bring most, and adds up what they
 * bring. Within a group any board fits any set and all boards cost the same, so that serving the sets by what they save, the most
 * first, is a pairing of maximum weight. Boards of the lot go first to sets already on the bench. Not safe for threads.
 */
final class HarvestCount {
    private static final int KINDS = PartPrices.KINDS.size();

    /** Sets of a kind that need a board of a kind and of a group. */
    private record Need(int i, int kind, int group, double gain) {}

    private final Harvest harvest;
    private final Kind[] kinds;
    private final int broken;
    /** Chance that broken glass is stripped, by kind of set; below 0 = its family is not certain. */
    private final double[] stripped;
    /** Some board may be needed, by fault. */
    private final boolean[] needing;
    /** The most first. */
    private final Need[] needs;
    /** Place among these by kind of set, kind of board and group within the family; -1 = nothing to gain. */
    private final int[][][] place;

    private final int[] count;
    private final double[] supply;
    private final double[] open;
    /** Groups that sets of the lot belong to. */
    private final int[] mine;

    private double takeUp = 1;
    /** Sums by kind of set and of board: pairs, gain. */
    final double[][][] sums;
    /** Pairs, gain, its square, pairs of sets already here, their gain; of all lots. */
    final double[] totals = new double[5];

    private final double[] lot = new double[5];

    HarvestCount(Parts parts, Kind[] kinds) {
        harvest = parts.harvest;
        this.kinds = kinds;
        broken = parts.records.codes.broken;
        supply = new double[harvest.fits.count()];
        open = new double[supply.length];
        stripped = new double[kinds.length];
        needing = new boolean[parts.records.codes.faults.size()];
        for (int f = 0; f < needing.length; f++) {
            for (int k = 0; k < KINDS; k++) {
                needing[f] |= harvest.needs(f, k) > 0;
            }
        }
        sums = new double[kinds.length][KINDS][2];
        place = new int[kinds.length][KINDS][];
        List<Need> all = new ArrayList<>();
        Set<Integer> touched = new TreeSet<>();
        for (int i = 0; i < kinds.length; i++) {
            int family = kinds[i].family();
            boolean certain = family >= 0 && kinds[i].sure() >= 1;
            stripped[i] = certain
                    ? parts.handling.route(broken, family, ExitKind.STRIPPED)
                            + parts.handling.route(broken, family, ExitKind.RECYCLED)
                    : -1;
            for (int k = 0; k < KINDS && certain; k++) {
                for (int g : harvest.fits.of(k, family)) {
                    touched.add(g);
                    if (harvest.gain(k, family) > 0) {
                        all.add(new Need(i, k, g, harvest.gain(k, family)));
                    }
                }
            }
        }
        mine = touched.stream().mapToInt(Integer::intValue).toArray();
        all.sort(Comparator.comparingDouble(Need::gain).reversed());
        needs = all.toArray(Need[]::new);
        count = new int[needs.length];
        places();
    }

    private void places() {
        for (int[][] of : place) {
            Arrays.fill(of, new int[0]);
        }
        for (int n = 0; n < needs.length; n++) {
            Need need = needs[n];
            int[] of = harvest.fits.of(need.kind(), kinds[need.i()].family());
            if (place[need.i()][need.kind()].length == 0) {
                place[need.i()][need.kind()] = new int[of.length];
            }
            for (int j = 0; j < of.length; j++) {
                if (of[j] == need.group()) {
                    place[need.i()][need.kind()][j] = n;
                }
            }
        }
    }

    /** A new state of the world. */
    void scenario(SplittableRandom random) {
        takeUp = harvest.drawTakeUp(random);
    }

    /** A new lot. */
    void start() {
        for (int g : mine) {
            supply[g] = harvest.stock(g);
            open[g] = harvest.unmet(g);
        }
        Arrays.fill(count, 0);
        Arrays.fill(lot, 0);
    }

    /** A set whose fault is not mended: a donor where its glass is broken. */
    void lost(int i, int fault, SplittableRandom random) {
        if (fault == broken && random.nextDouble() < stripped[i]) {
            donor(i, random);
        }
    }

    void donor(int i, SplittableRandom random) {
        for (int k = 0; k < KINDS; k++) {
            int family = kinds[i].family();
            int g = harvest.fits.of(k, family)[harvest.fits.draw(k, family, random)];
            if (open[g] > 0) {
                open[g]--;
                if (random.nextDouble() < takeUp) {
                    lot[3]++;
                    lot[4] += harvest.unmetGain(g);
                }
            } else {
                supply[g]++;
            }
        }
    }

    /** A set that is saved: it may have needed a board. */
    void saved(int i, int fault, SplittableRandom random) {
        if (!needing[fault] || stripped[i] < 0) {
            return;
        }
        double u = random.nextDouble();
        for (int k = 0; k < KINDS; k++) {
            double chance = harvest.needs(fault, k);
            if (u < chance) {
                patient(i, k, random);
                return;
            }
            u -= chance;
        }
    }

    /** A set that needs a board of a kind. */
    void patient(int i, int k, SplittableRandom random) {
        if (place[i][k].length > 0) {
            count[place[i][k][harvest.fits.draw(k, kinds[i].family(), random)]]++;
        }
    }

    /** What the pairs of this lot bring to it. */
    double gain(double weight, SplittableRandom random) {
        for (int n = 0; n < needs.length; n++) {
            if (count[n] == 0) {
                continue;
            }
            Need need = needs[n];
            int pairs = (int) Math.min(count[n], supply[need.group()]);
            supply[need.group()] -= pairs;
            int made = 0;
            for (int j = 0; j < pairs; j++) {
                made += random.nextDouble() < takeUp ? 1 : 0;
            }
            lot[0] += made;
            lot[1] += made * need.gain();
            sums[need.i()][need.kind()][0] += weight * made;
            sums[need.i()][need.kind()][1] += weight * made * need.gain();
        }
        lot[2] = lot[1] * lot[1];
        for (int i = 0; i < lot.length; i++) {
            totals[i] += weight * lot[i];
        }
        return lot[1];
    }

    /** Sum over the lots of what pairs bring to the sets of a kind. */
    double gainOf(int i) {
        double sum = 0;
        for (double[] of : sums[i]) {
            sum += of[1];
        }
        return sum;
    }

    /** Means over lots of this total weight; null where nothing was counted. */
    static @Nullable DonorGain of(Parts parts, Kind[] kinds, List<@Nullable HarvestCount> blocks, double weight) {
        double[] totals = new double[5];
        Map<List<Object>, double[]> rows = new LinkedHashMap<>();
        boolean counted = false;
        for (HarvestCount block : blocks) {
            if (block == null) {
                continue;
            }
            counted = true;
            for (int t = 0; t < totals.length; t++) {
                totals[t] += block.totals[t] / weight;
            }
            for (int i = 0; i < kinds.length; i++) {
                for (int k = 0; k < KINDS; k++) {
                    if (block.sums[i][k][0] > 0) {
                        double[] row = rows.computeIfAbsent(List.of(k, kinds[i].family()), key -> new double[2]);
                        row[0] += block.sums[i][k][0] / weight;
                        row[1] += block.sums[i][k][1] / weight;
                    }
                }
            }
        }
        if (!counted) {
            return null;
        }
        List<DonorGain.Row> list = new ArrayList<>();
        rows.forEach((key, row) -> list.add(new DonorGain.Row(
                PartPrices.KINDS.get((int) key.get(0)),
                parts.records.history.families().text((int) key.get(1)),
                parts.harvest.fits.byNumber((int) key.get(0), (int) key.get(1)),
                row[0],
                row[1])));
        list.sort(Comparator.comparingDouble(DonorGain.Row::gain)
                .reversed()
                .thenComparing(DonorGain.Row::family, Text.CODE_POINTS)
                .thenComparing(DonorGain.Row::kind));
        double spread = Math.sqrt(Math.max(0, totals[2] - totals[1] * totals[1]));
        return new DonorGain(totals[0], totals[1], spread, parts.harvest.takeUp(), totals[3], totals[4], list);
    }
}
