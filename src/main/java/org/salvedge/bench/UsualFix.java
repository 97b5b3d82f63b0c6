package org.salvedge.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;

/**
 * The fix that the shop's record proposes for a fault: the one with the most passes in the set's family, where there are a few,
 * else in the whole shop, else what is common practice.
 */
public final class UsualFix {
    private static final int FEW = 5;
    private static final Map<Fault, Fix> COMMON = Map.of(
            Fault.ROW_DRIVE, Fix.CONTACT_MASK,
            Fault.COLUMN_DRIVE, Fix.REBOND_FILM,
            Fault.TIMING_BOARD, Fix.TIMING_BOARD_SWAP,
            Fault.BACKLIGHT, Fix.LED_STRIPS,
            Fault.POWER_BOARD, Fix.POWER_BOARD_REPAIR,
            Fault.MAIN_BOARD, Fix.MAIN_BOARD_SWAP,
            Fault.FIRMWARE, Fix.REFLASH,
            Fault.PANEL_BROKEN, Fix.NONE,
            Fault.PORTS_AUDIO, Fix.PORT_REPAIR,
            Fault.NONE_FOUND, Fix.NONE);

    private final Map<List<String>, Map<String, Integer>> passes = new HashMap<>();

    private UsualFix() {}

    public static UsualFix of(History history) {
        UsualFix usual = new UsualFix();
        for (int set = 0; set < history.sets(); set++) {
            String family = history.families().text(history.setFamily(set));
            for (int a = history.attemptStart(set); a < history.attemptStart(set + 1); a++) {
                if (history.attemptPassed(a) == 1) {
                    String fault = history.faults().text(history.attemptFault(a));
                    String fix = history.fixes().text(history.attemptFix(a));
                    usual.count(List.of(fault), fix);
                    usual.count(List.of(fault, family), fix);
                }
            }
        }
        return usual;
    }

    private void count(List<String> of, String fix) {
        passes.computeIfAbsent(of, k -> new HashMap<>()).merge(fix, 1, Integer::sum);
    }

    /** Null where nothing is known of such a fault. */
    public @Nullable Fix of(String family, Fault fault) {
        Map<String, Integer> own = passes.getOrDefault(List.of(fault.code(), family), Map.of());
        int n = own.values().stream().mapToInt(Integer::intValue).sum();
        Map<String, Integer> from = n >= FEW ? own : passes.getOrDefault(List.of(fault.code()), Map.of());
        String best = null;
        for (Map.Entry<String, Integer> e : from.entrySet()) {
            int most = best == null ? 0 : from.getOrDefault(best, 0);
            if (best == null
                    || e.getValue() > most
                    || e.getValue() == most && e.getKey().compareTo(best) < 0) {
                best = e.getKey();
            }
        }
        return best == null ? COMMON.get(fault) : new Fix(best);
    }
}
