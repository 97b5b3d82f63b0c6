package org.salvedge.demo;

import static org.salvedge.shop.Fault.BACKLIGHT;
import static org.salvedge.shop.Fault.COLUMN_DRIVE;
import static org.salvedge.shop.Fault.FIRMWARE;
import static org.salvedge.shop.Fault.MAIN_BOARD;
import static org.salvedge.shop.Fault.NONE_FOUND;
import static org.salvedge.shop.Fault.PANEL_BROKEN;
import static org.salvedge.shop.Fault.PORTS_AUDIO;
import static org.salvedge.shop.Fault.POWER_BOARD;
import static org.salvedge.shop.Fault.ROW_DRIVE;
import static org.salvedge.shop.Fault.TIMING_BOARD;
import static org.salvedge.shop.Fault.UNKNOWN;

import java.util.List;
import java.util.Map;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;

/** What goes wrong in the invented sets, what is tried, and how it goes. Orders of magnitude are common practice, no source. */
final class DemoBench {
    private DemoBench() {}

    /**
     * One way of treating a fault.
     *
     * @param chance that it works
     * @param minutes median
     * @param parts median cost, book currency
     */
    record Way(Fix fix, double chance, double minutes, double parts) {}

    record Share(Fault fault, double share) {}

    static final List<Share> FAULTS = List.of(
            new Share(ROW_DRIVE, .16),
            new Share(COLUMN_DRIVE, .07),
            new Share(TIMING_BOARD, .09),
            new Share(BACKLIGHT, .20),
            new Share(POWER_BOARD, .14),
            new Share(MAIN_BOARD, .09),
            new Share(FIRMWARE, .06),
            new Share(PANEL_BROKEN, .07),
            new Share(PORTS_AUDIO, .04),
            new Share(NONE_FOUND, .06),
            new Share(UNKNOWN, .02));

    static final Map<Fault, List<Way>> WAYS = Map.ofEntries(
            Map.entry(ROW_DRIVE, List.of(new Way(Fix.CONTACT_MASK, .60, 42, 0), new Way(Fix.RESEAT_CABLE, .22, 14, 0))),
            Map.entry(
                    COLUMN_DRIVE, List.of(new Way(Fix.REBOND_FILM, .15, 55, 4), new Way(Fix.RESEAT_CABLE, .12, 14, 0))),
            Map.entry(TIMING_BOARD, List.of(new Way(Fix.TIMING_BOARD_SWAP, .70, 26, 22))),
            Map.entry(BACKLIGHT, List.of(new Way(Fix.LED_STRIPS, .78, 72, 24), new Way(Fix.LED_DRIVER, .5, 34, 9))),
            Map.entry(POWER_BOARD, List.of(new Way(Fix.POWER_BOARD_REPAIR, .76, 33, 12))),
            Map.entry(MAIN_BOARD, List.of(new Way(Fix.MAIN_BOARD_SWAP, .68, 24, 34), new Way(Fix.REFLASH, .2, 18, 0))),
            Map.entry(FIRMWARE, List.of(new Way(Fix.REFLASH, .74, 19, 0))),
            Map.entry(PORTS_AUDIO, List.of(new Way(Fix.PORT_REPAIR, .72, 28, 4))),
            Map.entry(NONE_FOUND, List.of(new Way(Fix.NONE, .95, 0, 0))),
            Map.entry(UNKNOWN, List.of(new Way(Fix.RESEAT_CABLE, .12, 15, 0))));

    private static final Map<Fault, Claim> TRUE_CLAIM = Map.ofEntries(
            Map.entry(ROW_DRIVE, Claim.HORIZONTAL_LINES),
            Map.entry(COLUMN_DRIVE, Claim.VERTICAL_LINES),
            Map.entry(TIMING_BOARD, Claim.HALF_SCREEN),
            Map.entry(BACKLIGHT, Claim.NO_PICTURE),
            Map.entry(POWER_BOARD, Claim.DEAD),
            Map.entry(MAIN_BOARD, Claim.BOOT_LOOP),
            Map.entry(FIRMWARE, Claim.BOOT_LOOP),
            Map.entry(PANEL_BROKEN, Claim.CRACKED),
            Map.entry(PORTS_AUDIO, Claim.NO_SOUND),
            Map.entry(NONE_FOUND, Claim.CUSTOMER_RETURN),
            Map.entry(UNKNOWN, Claim.UNTESTED));

    /** What an honest seller would write. */
    static Claim honest(Fault fault) {
        return TRUE_CLAIM.getOrDefault(fault, Claim.OTHER);
    }
}
