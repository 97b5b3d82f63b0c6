package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Text;
import tech.tablesaw.aggregate.AggregateFunctions;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * The sets decided in one month of one family, by the fault of their deciding attempt.
 *
 * @param fault "" for a set that was decided without an attempt
 */
public record DecidedCell(String family, String fault, int decided, int saved) {

    /** The cells of a month that occur, by family, then fault, in order of code points. */
    public static List<DecidedCell> of(Outcomes outcomes, YearMonth month) {
        History h = outcomes.history();
        Scope scope = Scope.of(outcomes, month);
        StringColumn family = StringColumn.create("by_family");
        StringColumn fault = StringColumn.create("by_fault");
        IntColumn saved = IntColumn.create("was_saved");
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && scope.holds(set)) {
                int deciding = outcomes.deciding(set);
                family.append(h.families().text(h.setFamily(set)));
                fault.append(deciding < 0 ? "" : h.faults().text(h.attemptFault(deciding)));
                saved.append(outcomes.saved(set) ? 1 : 0);
            }
        }
        if (saved.isEmpty()) {
            return List.of();
        }
        Table cells = Table.create("decided", family, fault, saved)
                .summarize("was_saved", AggregateFunctions.count, AggregateFunctions.sum)
                .by("by_family", "by_fault");
        List<DecidedCell> out = new ArrayList<>(cells.rowCount());
        for (Row row : cells) {
            out.add(new DecidedCell(
                    row.getString("by_family"),
                    row.getString("by_fault"),
                    (int) row.getDouble("Count [was_saved]"),
                    (int) row.getDouble("Sum [was_saved]")));
        }
        out.sort(Comparator.comparing(DecidedCell::family, Text.CODE_POINTS)
                .thenComparing(DecidedCell::fault, Text.CODE_POINTS));
        return List.copyOf(out);
    }
}
