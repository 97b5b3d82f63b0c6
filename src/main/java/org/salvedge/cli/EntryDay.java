package org.salvedge.cli;

import java.time.format.DateTimeFormatter;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Offer;

/** When a fact happened, before its line where a history is shown. */
final class EntryDay {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private EntryDay() {}

    /** The day and a space; "" where the line itself says it. */
    static String of(Fact fact) {
        if (fact instanceof Attempt a) {
            return TIME.format(a.startedAt()) + " ";
        } else if (fact instanceof Exit e) {
            return e.on() + " ";
        } else if (fact instanceof Comeback c) {
            return c.on() + " ";
        }
        return fact instanceof Offer o ? o.on() + " " : "";
    }
}
