package org.salvedge.ledger;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.YearMonth;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * That a month's review was printed.
 *
 * @param at when
 * @param last number of the last entry on record then; 0 = none
 * @param figures of its front page, by their names, in their order; what was not defined is not there
 */
public record Printing(YearMonth month, Instant at, long last, Map<String, BigDecimal> figures) {
    public Printing {
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    }
}
