package org.salvedge.ledger;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Settings;

/** The settings that a package's figures rest on, as far as it names them. */
public record PackageSettings(
        @Nullable Currency currency,
        @Nullable ZoneId zone,
        @Nullable BigDecimal labourRate,
        @Nullable Basis basis) {
    static final PackageSettings NONE = new PackageSettings(null, null, null, null);

    static PackageSettings of(Settings settings) {
        return new PackageSettings(settings.currency(), settings.zone(), settings.labourRate(), settings.basis());
    }
}
