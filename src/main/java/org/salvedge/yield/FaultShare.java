package org.salvedge.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.salvedge.shop.Text;

/**
 * How often a fault was met among the sets decided in a month.
 *
 * @param fault "" where no attempt was made
 */
public record FaultShare(String fault, int decided, int saved) {

    /** Most frequent first, then by code points. */
    public static List<FaultShare> of(List<DecidedCell> cells) {
        Map<String, int[]> sums = new TreeMap<>(Text.CODE_POINTS);
        for (DecidedCell cell : cells) {
            int[] sum = sums.computeIfAbsent(cell.fault(), f -> new int[2]);
            sum[0] += cell.decided();
            sum[1] += cell.saved();
        }
        List<FaultShare> shares = new ArrayList<>();
        sums.forEach((fault, sum) -> shares.add(new FaultShare(fault, sum[0], sum[1])));
        shares.sort(Comparator.comparingInt(FaultShare::decided).reversed());
        return List.copyOf(shares);
    }
}
