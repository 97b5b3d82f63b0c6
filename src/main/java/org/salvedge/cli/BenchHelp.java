package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Fault;

/** Codes by their numbers, and cautions where the work is at hand. */
final class BenchHelp {
    private static final Map<Fault, String> CAUTIONS = Map.of(
            Fault.BACKLIGHT,
                    "Backlight supplies stay charged after unplugging; cold-cathode tubes in old sets hold mercury.",
            Fault.POWER_BOARD, "Mains supplies hold a dangerous charge after unplugging.",
            Fault.PANEL_BROKEN, "Cracked glass: eye protection and gloves; leaking parts are waste.",
            Fault.ROW_DRIVE, "Electrostatic discharge kills drivers: ground yourself before you touch a ribbon.",
            Fault.COLUMN_DRIVE, "Electrostatic discharge kills drivers: ground yourself before you touch a ribbon.");

    private BenchHelp() {}

    static void say(Session session) {
        var codes = session.shop().settings().codes();
        Wording.say(session, "Faults: " + numbered(codes.faults().keySet()));
        Wording.say(session, "Fixes: " + numbered(codes.fixes().keySet()) + "; . = the one proposed");
        Wording.say(
                session,
                "Result: y, n, - (no retest). Then: a b c grade; s safety tested, o owner data reset; p21.50 parts; +p0001 a part out of stock; h8 soak"
                        + " hours; 45m or 8+45m minutes; \"a note\". u undo, p stop the watch, n next set, q end.");
    }

    private static String numbered(Set<? extends Coded> codes) {
        List<String> words = new ArrayList<>();
        for (Coded code : codes) {
            words.add(words.size() + 1 + " " + code.code());
        }
        return String.join(", ", words);
    }

    /** Once in a talk. */
    static void caution(Session session, Fault fault, Set<Fault> said) {
        String words = CAUTIONS.get(fault);
        if (words != null && said.add(fault)) {
            session.remark("  " + words);
        }
    }
}
