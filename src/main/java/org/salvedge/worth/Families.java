package org.salvedge.worth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Names;
import org.salvedge.shop.TvSet;

/**
 * From a listed model to the family it belongs to: the shop's own table, else the family of the same model, else that of the model
 * which begins alike for longest. How far such a guess can be trusted is learnt from the record: each time a model came for the
 * first time, whether the guess of that day was right.
 */
final class Families implements java.io.Serializable {
    private static final int LONGEST = 12;
    private static final double WORTH = 3;
    private static final int MOST_MODELS = 2500;
    private static final double SAME_SIZE = 0.04;
    private static final double NEW_WORTH = 4;

    /** A model number met before. */
    private record Known(String model, int maker, double logInches, int family, int sets)
            implements java.io.Serializable {}

    /**
     * @param family number in the history, -1 = none
     * @param sure chance that it is right
     */
    record Guess(int family, double sure, String why) {}

    private final Names families;
    private final Map<String, String> table;
    private final Map<String, Integer> byModel = new HashMap<>();
    private final List<Known> known = new ArrayList<>();
    private final double[] right = new double[LONGEST + 1];
    private final double[] tried = new double[LONGEST + 1];

    Families(Records r, Map<String, String> table) {
        History history = r.history;
        families = history.families();
        this.table = table;
        int models = history.models().size();
        List<Map<Integer, Integer>> counts = new ArrayList<>();
        for (int i = 0; i < models; i++) {
            counts.add(new HashMap<>());
        }
        int[] firstSet = new int[models];
        java.util.Arrays.fill(firstSet, -1);
        int[] order = r.lotsInOrder();
        int[] rank = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            rank[order[i]] = i;
        }
        for (int s = 0; s < history.sets(); s++) {
            int m = history.setListedModel(s) >= 0 ? history.setListedModel(s) : history.setModel(s);
            counts.get(m).merge(history.setFamily(s), 1, Integer::sum);
            if (firstSet[m] < 0 || rank[r.lot(s)] < rank[r.lot(firstSet[m])]) {
                firstSet[m] = s;
            }
        }
        List<Integer> inOrder = new ArrayList<>();
        for (int m = 0; m < models; m++) {
            if (firstSet[m] >= 0 && !plain(history.models().text(m)).isEmpty()) {
                inOrder.add(m);
            }
        }
        inOrder.sort((a, b) -> rank[r.lot(firstSet[a])] != rank[r.lot(firstSet[b])]
                ? Integer.compare(rank[r.lot(firstSet[a])], rank[r.lot(firstSet[b])])
                : Integer.compare(a, b));
        List<Known> waiting = new ArrayList<>();
        int lot = -1;
        int skip = Math.max(0, inOrder.size() - MOST_MODELS);
        for (int i = 0; i < inOrder.size(); i++) {
            int m = inOrder.get(i);
            int s = firstSet[m];
            if (r.lot(s) != lot) {
                known.addAll(waiting);
                waiting.clear();
                lot = r.lot(s);
            }
            Known k = known(r, m, s, counts.get(m));
            if (i >= skip && known.size() >= 3) {
                learn(k, order.length < 2 ? 1 : (rank[lot] + 1.0) / order.length);
            }
            byModel.putIfAbsent(k.model, k.family);
            waiting.add(k);
        }
        known.addAll(waiting);
    }

    private Known known(Records r, int model, int set, Map<Integer, Integer> counts) {
        int family = -1;
        int most = 0;
        for (Map.Entry<Integer, Integer> e : counts.entrySet()) {
            if (e.getValue() > most || e.getValue() == most && e.getKey() < family) {
                family = e.getKey();
                most = e.getValue();
            }
        }
        return new Known(
                plain(r.history.models().text(model)), r.history.setMaker(set), r.logInches[set], family, most);
    }

    private void learn(Known k, double weight) {
        Known near = nearest(k.model, k.maker, k.logInches);
        if (near != null) {
            int l = Math.min(LONGEST, shared(k.model, near.model));
            tried[l] += weight;
            right[l] += near.family == k.family ? weight : 0;
        }
    }

    /** The model that begins alike for longest, among those of the same maker and size where these are known. */
    private @Nullable Known nearest(String model, int maker, double logInches) {
        Known best = null;
        int longest = 1;
        for (Known k : known) {
            if (maker >= 0 && k.maker != maker
                    || !Double.isNaN(logInches) && Math.abs(k.logInches - logInches) > SAME_SIZE) {
                continue;
            }
            int l = shared(k.model, model);
            if (l > longest || l == longest && best != null && k.sets > best.sets) {
                longest = l;
                best = k;
            }
        }
        return best;
    }

    private double sure(int length) {
        double before = length <= 1 ? 0.1 : length == 2 ? 0.3 : length == 3 ? 0.5 : length == 4 ? 0.7 : 0.85;
        double r = right[length];
        double t = tried[length];
        if (length > 2) {
            r += 0.5 * right[length - 1];
            t += 0.5 * tried[length - 1];
        }
        if (length < LONGEST) {
            r += 0.5 * right[length + 1];
            t += 0.5 * tried[length + 1];
        }
        return (r + WORTH * before) / (t + WORTH);
    }

    /** @param maker number in the history, -1 = not known; inches NaN = not known */
    Guess guess(@Nullable String listed, int maker, double logInches) {
        String model = listed == null || listed.equals(TvSet.UNKNOWN) ? "" : plain(listed);
        int longest = -1;
        String given = "";
        for (Map.Entry<String, String> e : table.entrySet()) {
            String key = plain(e.getKey());
            if (key.length() > longest && model.startsWith(key)) {
                longest = key.length();
                given = e.getValue();
            }
        }
        if (longest >= 0) {
            return new Guess(families.find(given), 1, "family given by the shop's table");
        }
        Integer same = byModel.get(model);
        if (same != null) {
            return new Guess(same, 1, "model seen before");
        }
        Known near = model.isEmpty() ? null : nearest(model, maker, logInches);
        if (near == null) {
            return new Guess(-1, 0, "model never seen and none like it");
        }
        int l = Math.min(LONGEST, shared(model, near.model));
        return new Guess(near.family, sure(l), "model never seen; begins like " + near.model);
    }

    /**
     * Families of the sets of that maker and size so far, where these are known, with how often each came; the last entry, family
     * -1, stands for one never seen.
     */
    Shares likely(int maker, double logInches) {
        int[] count = new int[families.size()];
        int all = 0;
        for (Known k : known) {
            if ((maker < 0 || k.maker == maker)
                    && (Double.isNaN(logInches) || Math.abs(k.logInches - logInches) <= SAME_SIZE)) {
                count[k.family] += k.sets;
                all += k.sets;
            }
        }
        int n = 0;
        int[] family = new int[count.length + 1];
        double[] cumulated = new double[count.length + 1];
        double sum = 0;
        for (int f = 0; f < count.length; f++) {
            if (count[f] > 0) {
                family[n] = f;
                sum += count[f] / (all + NEW_WORTH);
                cumulated[n++] = sum;
            }
        }
        family[n] = -1;
        cumulated[n++] = 1;
        return new Shares(java.util.Arrays.copyOf(family, n), java.util.Arrays.copyOf(cumulated, n));
    }

    /** Families and their chances, cumulated. */
    record Shares(int[] family, double[] cumulated) {
        int pick(double u) {
            int i = 0;
            while (i < family.length - 1 && u >= cumulated[i]) {
                i++;
            }
            return family[i];
        }
    }

    /** The beginning by which strangers are told apart. */
    static String beginning(@Nullable String model) {
        String p = model == null ? "" : plain(model);
        return p.substring(0, Math.min(4, p.length()));
    }

    static String plain(String model) {
        StringBuilder sb = new StringBuilder();
        for (int i = 0; i < model.length(); i++) {
            char c = model.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                sb.append(c);
            }
        }
        String text = sb.toString().toUpperCase(Locale.ROOT);
        return text.equals("UNKNOWN") ? "" : text;
    }

    private static int shared(String a, String b) {
        int n = Math.min(a.length(), b.length());
        int i = 0;
        while (i < n && a.charAt(i) == b.charAt(i)) {
            i++;
        }
        return i;
    }
}
