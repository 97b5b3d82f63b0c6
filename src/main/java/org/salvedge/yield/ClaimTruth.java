package org.salvedge.yield;

import java.util.List;
import java.util.Map;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;

/** Which faults a claim means, where it means any: what a seller who had looked would have said of them. */
final class ClaimTruth {
    private static final Map<String, List<String>> MEANS = Map.ofEntries(
            Map.entry(Claim.HORIZONTAL_LINES.code(), List.of(Fault.ROW_DRIVE.code())),
            Map.entry(Claim.VERTICAL_LINES.code(), List.of(Fault.COLUMN_DRIVE.code())),
            Map.entry(
                    Claim.HALF_SCREEN.code(),
                    List.of(Fault.COLUMN_DRIVE.code(), Fault.ROW_DRIVE.code(), Fault.TIMING_BOARD.code())),
            Map.entry(
                    Claim.NO_PICTURE.code(),
                    List.of(Fault.BACKLIGHT.code(), Fault.TIMING_BOARD.code(), Fault.MAIN_BOARD.code())),
            Map.entry(Claim.DEAD.code(), List.of(Fault.POWER_BOARD.code(), Fault.MAIN_BOARD.code())),
            Map.entry(Claim.DIM_PATCHY.code(), List.of(Fault.BACKLIGHT.code())),
            Map.entry(Claim.BOOT_LOOP.code(), List.of(Fault.FIRMWARE.code(), Fault.MAIN_BOARD.code())),
            Map.entry(Claim.NO_SOUND.code(), List.of(Fault.PORTS_AUDIO.code(), Fault.MAIN_BOARD.code())),
            Map.entry(Claim.CRACKED.code(), List.of(Fault.PANEL_BROKEN.code())),
            Map.entry(Claim.WORKING.code(), List.of(Fault.NONE_FOUND.code())));

    private ClaimTruth() {}

    /** Whether the claim says anything that can be true or not. */
    static boolean says(String claim) {
        return MEANS.containsKey(claim);
    }

    static boolean holds(String claim, String fault) {
        List<String> meant = MEANS.get(claim);
        return meant != null && meant.contains(fault);
    }
}
