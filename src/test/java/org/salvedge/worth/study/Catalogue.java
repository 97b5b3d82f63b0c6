package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Draws the model families of one market. Makers and numbers are invented. */
final class Catalogue {
    private static final int[] SIZES = {24, 32, 40, 43, 50, 55, 65, 75};
    private static final double[] SIZE_SHARE = {4, 15, 14, 16, 16, 20, 11, 4};
    private static final double[] SIZE_PRICE = {70, 96, 138, 168, 210, 268, 385, 560};
    private static final String[] MAKERS = {"Ostrel", "Kavimo", "Belquin", "Zarnetta", "Umbrik", "Pellora", "Dantive"};
    private static final String SERIES = "ABCDEFGHKLMNPRTUVX";
    private static final int FAULTS = Words.FAULTS.size();

    /** How a maker builds its model numbers. */
    private enum Scheme {
        SERIES_FIRST,
        SIZE_FIRST,
        OPAQUE
    }

    private Catalogue() {}

    /**
     * @param lastDay of the history, since the shop's first day
     * @param reserves families kept out of the history
     */
    static List<Family> draw(int lastDay, int reserves, Dice dice) {
        List<Family> families = new ArrayList<>();
        for (int m = 0; m < MAKERS.length; m++) {
            Scheme scheme = m < 4 ? Scheme.SERIES_FIRST : m < 6 ? Scheme.SIZE_FIRST : Scheme.OPAQUE;
            double makerTier = dice.chance(0.25) ? dice.between(1.35, 1.75) : dice.between(0.7, 1.1);
            double[] makerWeak = traits(dice, 3.0);
            double share = dice.gamma(1.6, 1);
            int chains = dice.whole(4, 6);
            for (int s = 0; s < chains; s++) {
                series(families, m, scheme, makerTier, makerWeak, share, s, lastDay, false, dice);
            }
        }
        int seen = families.size();
        for (int s = 0; families.size() < seen + reserves; s++) {
            int m = dice.whole(0, MAKERS.length - 1);
            Scheme scheme = m < 4 ? Scheme.SERIES_FIRST : m < 6 ? Scheme.SIZE_FIRST : Scheme.OPAQUE;
            series(families, m, scheme, dice.between(0.75, 1.4), traits(dice, 3.0), 1, 7 + s, lastDay, true, dice);
        }
        return atOrdinaryPrices(families, lastDay);
    }

    /** A shop lives in a market that feeds it: brings the price for its size to that of the list on average. */
    private static List<Family> atOrdinaryPrices(List<Family> families, int lastDay) {
        double dear = 0;
        double all = 0;
        for (Family f : families) {
            double often = f.reserve() ? 0 : f.frequency(lastDay / 2) + f.frequency(lastDay);
            dear += often * f.price() / listPrice(f.inches());
            all += often;
        }
        double factor = all / dear;
        return families.stream().map(f -> f.times(factor)).toList();
    }

    private static double listPrice(double inches) {
        return SIZE_PRICE[Arrays.binarySearch(SIZES, (int) inches)];
    }

    private static void series(
            List<Family> families,
            int m,
            Scheme scheme,
            double tier,
            double[] makerWeak,
            double share,
            int s,
            int lastDay,
            boolean reserve,
            Dice dice) {
        int launch = reserve ? lastDay - dice.whole(150, 500) : dice.whole(-1500, lastDay - 60);
        double seriesTier = tier * dice.between(0.85, 1.2);
        double[] seriesWeak = traits(dice, 2.5);
        boolean hardToMask = dice.chance(0.4);
        String letter = SERIES.charAt((s * 5 + m) % SERIES.length()) + "" + dice.whole(1, 9);
        int sizes = reserve ? dice.whole(1, 2) : dice.whole(1, 3);
        for (int z = 0; z < sizes; z++) {
            int size = dice.pick(SIZE_SHARE);
            String begin = begin(MAKERS[m], scheme, letter, SIZES[size], s, z, dice);
            if (families.stream().anyMatch(f -> f.name().equals(begin))) {
                continue;
            }
            double odd = Math.max(0.65, Math.min(1.8, 1 + 0.08 * dice.student(3)));
            families.add(new Family(
                    begin,
                    MAKERS[m],
                    SIZES[size],
                    SIZE_PRICE[size] * seriesTier * odd,
                    dice.gamma(1, 0.005),
                    0.75 + 0.45 * SIZES[size] / 55.0 * dice.between(0.6, 1.1),
                    launch + dice.whole(0, 60),
                    Shares.of(product(makerWeak, seriesWeak, traits(dice, 6))),
                    Shares.of(ease(hardToMask, dice)),
                    dice.gamma(25, 1),
                    models(begin, scheme, dice),
                    share * dice.gamma(0.9, 1) * SIZE_SHARE[size] / 15,
                    reserve));
        }
    }

    private static String begin(String maker, Scheme scheme, String letter, int inches, int s, int z, Dice dice) {
        String code = maker.substring(0, 2).toUpperCase(Locale.ROOT);
        return switch (scheme) {
            case SERIES_FIRST -> code + letter + inches;
            case SIZE_FIRST -> code + inches + letter;
            case OPAQUE -> code + (10 * (11 + 7 * s) + 3 * z + dice.whole(0, 2));
        };
    }

    private static List<String> models(String begin, Scheme scheme, Dice dice) {
        List<String> models = new ArrayList<>();
        int n = dice.whole(2, 7);
        for (int i = 0; i < n; i++) {
            String number = begin + (scheme == Scheme.OPAQUE ? "" : "0") + (10 + 10 * i + dice.whole(0, 9));
            models.add(dice.chance(0.3) ? number + "-" + SERIES.charAt(dice.whole(0, 9)) : number);
        }
        return models;
    }

    /** Factors around 1, one a fault; a high number keeps them close to it. */
    private static double[] traits(Dice dice, double likeness) {
        double[] traits = new double[FAULTS];
        for (int f = 0; f < FAULTS; f++) {
            traits[f] = dice.gamma(likeness, 1);
        }
        traits[Words.GLASS] = Math.sqrt(traits[Words.GLASS]);
        return traits;
    }

    private static double[] product(double[] a, double[] b, double[] c) {
        double[] out = new double[a.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = Math.max(0.15, Math.sqrt(a[i] * b[i]) * Math.sqrt(c[i]));
        }
        return out;
    }

    private static double[] ease(boolean hardToMask, Dice dice) {
        double[] ease = new double[FAULTS];
        for (int f = 0; f < FAULTS; f++) {
            ease[f] = dice.chance(0.1) ? dice.between(0.4, 0.7) : dice.between(0.9, 1.15);
        }
        ease[Words.ROW] = hardToMask ? dice.between(0.4, 0.65) : dice.between(1.1, 1.4);
        return ease;
    }
}
