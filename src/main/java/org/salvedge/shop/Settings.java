package org.salvedge.shop;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The shop's settings, as {@code shop.toml} gives them or as they are where it is silent.
 *
 * @param labourRate per hour, book currency; the rate in force counts for all dates
 * @param basis how landed cost is shared where nothing else is said
 * @param confidence of the highest bid, between 0 and 1
 * @param targetReturn profit asked for, as a fraction of the outlay
 * @param draws of the simulation
 * @param families beginning of a model number = family; the longest wins
 * @param columns a seller's header word = field
 * @param symptoms a seller's words = claim code
 */
public record Settings(
        Currency currency,
        ZoneId zone,
        BigDecimal labourRate,
        Basis basis,
        double confidence,
        double targetReturn,
        int draws,
        long seed,
        String pageSize,
        Map<String, String> families,
        Map<String, String> columns,
        Map<String, String> symptoms,
        Codes codes) {

    public static final BigDecimal LABOUR_RATE = new BigDecimal("24");

    public Settings {
        if (labourRate.signum() < 0) {
            throw new IllegalArgumentException("labour_rate must not be negative, but is " + labourRate);
        }
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("confidence must lie between 0 and 1, not " + confidence);
        }
        if (draws < 100) {
            throw new IllegalArgumentException("draws must be at least 100, not " + draws);
        }
        families = inOrder(families);
        columns = inOrder(columns);
        symptoms = inOrder(symptoms);
    }

    /** What holds where nothing is said. */
    public static Settings defaults(Currency currency, ZoneId zone) {
        return new Settings(
                currency,
                zone,
                LABOUR_RATE,
                Basis.EQUAL,
                0.8,
                0,
                20_000,
                1,
                "A4",
                Map.of(),
                Map.of(),
                Map.of(),
                Codes.BUILT_IN);
    }

    /** A copy that keeps the order of the file: what is read from it then does not depend on the run. */
    private static Map<String, String> inOrder(Map<String, String> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
