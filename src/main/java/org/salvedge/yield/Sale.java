package org.salvedge.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;

/**
 * One sale of a set and how it came back.
 *
 * @param exit row of the exit
 * @param comebacks rows of the comebacks of this sale, in order of time; none = it has not come back
 */
record Sale(int exit, List<Integer> comebacks) {

    /**
     * The sales of one set in order. A comeback belongs to the latest sale before it, and the one that restocks ends that sale, so
     * that on the day of a second sale it belongs to the first.
     */
    static List<Sale> of(History h, int set) {
        List<Integer> exits = IntStream.range(h.exitStart(set), h.exitStart(set + 1))
                .filter(e -> isSale(h, e))
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(h::exitDay).thenComparingInt(h::exitSeq))
                .toList();
        if (exits.isEmpty()) {
            return List.of();
        }
        List<Integer> comebacks = IntStream.range(h.comebackStart(set), h.comebackStart(set + 1))
                .boxed()
                .sorted(Comparator.comparingInt(h::comebackDay))
                .toList();
        List<Sale> sales = new ArrayList<>();
        int next = 0;
        for (int exit : exits) {
            List<Integer> own = new ArrayList<>();
            boolean ended = false;
            while (!ended && next < comebacks.size()) {
                own.add(comebacks.get(next));
                ended = h.comebackRestocked(comebacks.get(next)) == 1;
                next++;
            }
            sales.add(new Sale(exit, List.copyOf(own)));
        }
        return sales;
    }

    static boolean isSale(History h, int exit) {
        return h.exitGone(exit) == 1 && h.exitKind(exit) == ExitKind.SOLD.ordinal();
    }
}
