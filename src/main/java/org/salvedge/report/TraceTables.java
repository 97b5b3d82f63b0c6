package org.salvedge.report;

import java.util.List;
import org.salvedge.yield.LotLine;
import org.salvedge.yield.OpenSet;
import org.salvedge.yield.TraceAttempt;
import org.salvedge.yield.TraceSale;
import org.salvedge.yield.TraceSet;

/** The lists that figures lead to. */
final class TraceTables {
    private final Trace trace;

    TraceTables(Trace trace) {
        this.trace = trace;
    }

    Table sets() {
        return sets("Sets behind the figures, by family and fault", trace.sets);
    }

    Table setsBySupplier() {
        return sets("Sets behind the figures, by supplier and lot", trace.bySupplier);
    }

    Table decided() {
        return sets("Sets decided, by month and fault", trace.decided);
    }

    Table gone() {
        return sets("Sets gone, by month and family", trace.gone);
    }

    private static Table sets(String title, List<TraceSet> rows) {
        Table.Builder table = WhyTables.of(
                        Figure.UNIT,
                        Figure.SUPPLIER,
                        Figure.LOT,
                        Figure.FAMILY,
                        Figure.FAULT,
                        Figure.FIX,
                        Figure.DECIDED_IN,
                        Figure.WAS_SAVED,
                        Figure.GONE_IN,
                        Figure.SET_MARGIN)
                .title(title);
        for (TraceSet s : rows) {
            table.row(
                    s.unit(),
                    s.supplier(),
                    s.lot(),
                    s.family(),
                    s.fault(),
                    s.fix(),
                    s.decided() == null ? null : s.decided().toString(),
                    s.decided() == null ? null : s.saved(),
                    s.gone() == null ? null : s.gone().toString(),
                    s.margin());
        }
        return table.build();
    }

    Table attempts() {
        return attempts("Attempts behind the fixes' figures", trace.attempts);
    }

    Table ofMonth() {
        return attempts("Attempts on the sets decided in the month, by fix and family", trace.ofMonth);
    }

    private static Table attempts(String title, List<TraceAttempt> rows) {
        Table.Builder table = WhyTables.of(
                        Figure.FIX,
                        Figure.FAULT,
                        Figure.FAMILY,
                        Figure.UNIT,
                        Figure.NUMBER,
                        Figure.ON,
                        Figure.WAS_FIRST,
                        Figure.RESULT_OF,
                        Figure.ATTEMPT_MINUTES,
                        Figure.ATTEMPT_PARTS)
                .title(title);
        for (TraceAttempt a : rows) {
            table.row(
                    a.fix(),
                    a.fault(),
                    a.family(),
                    a.unit(),
                    a.number(),
                    a.on(),
                    a.first(),
                    a.passed() ? "passed" : "failed",
                    a.minutes() > 0 ? a.minutes() : null,
                    a.parts());
        }
        return table.build();
    }

    Table sales() {
        Table.Builder table = WhyTables.of(
                        Figure.LATEST_FIX,
                        Figure.UNIT,
                        Figure.FAMILY,
                        Figure.SOLD_ON,
                        Figure.CAME_BACK,
                        Figure.DAYS_LOOKED_AT,
                        Figure.REFUND)
                .title("Sales behind the figures of comebacks, by latest fix");
        for (TraceSale s : trace.sales) {
            table.row(s.fix(), s.unit(), s.family(), s.on(), s.back(), s.days(), s.cost());
        }
        return table.build();
    }

    Table lots() {
        return lots("Lots, latest first", trace.lots);
    }

    Table lotsBySupplier() {
        return lots("Lots by supplier, latest first", trace.lotsBySupplier);
    }

    private static Table lots(String title, List<LotLine> lots) {
        Table.Builder table = WhyTables.of(
                        Figure.LOT,
                        Figure.SUPPLIER,
                        Figure.BOUGHT,
                        Figure.CAME_ON,
                        Figure.LISTED,
                        Figure.ARRIVED,
                        Figure.DECIDED,
                        Figure.SAVED,
                        Figure.IN_PROGRESS,
                        Figure.HERE,
                        Figure.LANDED,
                        Figure.RECOVERED,
                        Figure.RESULT)
                .title(title);
        for (LotLine lot : lots) {
            table.row(
                    lot.lot(),
                    lot.supplier(),
                    lot.bought(),
                    lot.arrival(),
                    lot.listed(),
                    lot.arrived(),
                    lot.decided(),
                    lot.saved(),
                    lot.inProgress(),
                    lot.here(),
                    lot.landed(),
                    lot.recovered(),
                    lot.result());
        }
        return table.build();
    }

    Table open() {
        Table.Builder table = WhyTables.of(
                        Figure.UNIT,
                        Figure.LOT,
                        Figure.FAMILY,
                        Figure.MODEL,
                        Figure.CLAIMED,
                        Figure.OPEN_STATE,
                        Figure.DAYS,
                        Figure.ATTEMPTS,
                        Figure.MINUTES,
                        Figure.COST)
                .title("Open sets");
        for (OpenSet set : trace.open) {
            table.row(
                    set.unit(),
                    set.lot(),
                    set.family(),
                    set.model(),
                    set.claimed(),
                    Trace.state(set),
                    set.days(),
                    set.attempts(),
                    set.minutes(),
                    set.cost());
        }
        return table.build();
    }
}
