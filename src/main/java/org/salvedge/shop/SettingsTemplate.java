package org.salvedge.shop;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Currency;

/** The {@code shop.toml} of a new shop: every setting with its default, and what it does. */
public final class SettingsTemplate {
    private SettingsTemplate() {}

    /** @param zone written as a comment, so that the machine's zone counts, unless it is fixed */
    public static String of(Currency currency, ZoneId zone, boolean fixed) {
        return of(currency, zone, fixed, Settings.LABOUR_RATE, Basis.EQUAL);
    }

    /** The same with other figures than the defaults, as a history that moves in was kept with. */
    public static String of(Currency currency, ZoneId zone, boolean fixed, BigDecimal labourRate, Basis basis) {
        return """
            # Settings of this shop. Options of the same name override them for one run (--labour 30, --draws 5000).

            # The currency the books are kept in (ISO 4217). It cannot change once something is booked.
            currency = "%s"

            # Days are those of this time zone.
            %szone = "%s"

            # What an hour at the bench costs; the rate in force counts for all dates.
            labour_rate = %s

            # How a lot's landed cost is shared among its sets: "equal", "area" (of the screen) or "value" (the seller's asking).
            basis = "%s"

            # The highest bid makes money with this chance, and this much of the outlay beside.
            confidence = 0.8
            target_return = 0

            # Draws of the simulation, and the seed that makes them the same each time.
            draws = 20000
            seed = 1

            # Paper of printed reports: "A4" or "Letter".
            page_size = "A4"

            # Model families: beginning of a model number = family. The longest beginning wins. A model without an entry takes
            # the family of the same model, else of the longest shared beginning in history, else its own. After a change:
            # salvedge regroup
            [families]
            # "KX-55" = "Kestrel KX-55"

            # Header words of your sellers: heading = field (model, maker, inches, serial, claimed, asking, quantity).
            [columns]
            # "Item No." = "model"

            # Your sellers' words for symptoms: words = claim code.
            [symptoms]
            # "lines on scrn" = "horizontal_lines"

            # Codes of your own beside those that are there: salvedge attempt --help lists them.
            [codes]
            # faults = ["remote_sensor"]
            # fixes = ["sensor_swap"]
            """.formatted(
                        currency.getCurrencyCode(),
                        fixed ? "" : "# ",
                        zone.getId(),
                        labourRate.stripTrailingZeros().toPlainString(),
                        basis.code());
    }
}
