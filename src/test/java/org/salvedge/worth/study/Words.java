package org.salvedge.worth.study;

import java.util.List;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;

/** Codes as small numbers, in the order of the built-in lists. */
final class Words {
    static final List<String> CLAIMS =
            Claim.BUILT_IN.keySet().stream().map(Claim::code).toList();
    static final List<String> FAULTS =
            Fault.BUILT_IN.keySet().stream().map(Fault::code).toList();
    static final List<String> FIXES =
            Fix.BUILT_IN.keySet().stream().map(Fix::code).toList();

    static final int ROW = FAULTS.indexOf("row_drive");
    static final int COLUMN = FAULTS.indexOf("column_drive");
    static final int TIMING = FAULTS.indexOf("timing_board");
    static final int LIGHT = FAULTS.indexOf("backlight");
    static final int POWER = FAULTS.indexOf("power_board");
    static final int MAIN = FAULTS.indexOf("main_board");
    static final int FIRMWARE = FAULTS.indexOf("firmware");
    static final int GLASS = FAULTS.indexOf("panel_broken");
    static final int PORTS = FAULTS.indexOf("ports_audio");
    static final int NONE_FOUND = FAULTS.indexOf("none_found");
    static final int UNKNOWN = FAULTS.indexOf("unknown");

    static final int CRACKED = CLAIMS.indexOf("cracked");
    static final int NO_FIX = FIXES.indexOf("none");

    private Words() {}
}
