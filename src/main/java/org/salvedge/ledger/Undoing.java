package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Refused;

/** Takes acts back, within a transaction of the caller. */
record Undoing(Store store, Recorder recorder) {
    Map<Long, Long> act(@Nullable Long entry, String why) throws SQLException {
        long number = entry == null
                ? new Entries(store)
                        .latest()
                        .map(Entry::number)
                        .orElseThrow(() -> new Refused("there is no entry to undo"))
                : entry;
        List<Long> entries = new Acts(store).standing(number, entry == null);
        if (entries.isEmpty()) { // gone already: the refusal says so
            entries = List.of(number);
        }
        List<Long> numbers = recorder.undo(entries, why);
        Map<Long, Long> undone = new LinkedHashMap<>();
        for (int i = 0; i < entries.size(); i++) {
            undone.put(entries.get(i), numbers.get(i));
        }
        return undone;
    }
}
