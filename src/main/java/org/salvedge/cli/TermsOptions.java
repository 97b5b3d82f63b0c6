package org.salvedge.cli;

import java.math.BigDecimal;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Terms;
import picocli.CommandLine.Option;

/** Terms of a sale, and what the buyer asks of it; a mixin. */
final class TermsOptions {
    @Option(names = "--premium-pct", paramLabel = "X", description = "Buyer's premium in per cent of the price.")
    @Nullable
    Amount premiumPct;

    @Option(names = "--freight", paramLabel = "AMOUNT", description = "Transport in.")
    @Nullable
    Amount freight;

    @Option(names = "--other", paramLabel = "AMOUNT", description = "Unrecoverable tax, pallets.")
    @Nullable
    Amount other;

    @Option(
            names = "--confidence",
            paramLabel = "C",
            description = "Chance to keep the promise at the highest bid, between 0 and 1 (default: shop.toml).")
    @Nullable
    BigDecimal confidence;

    @Option(
            names = "--target-return",
            paramLabel = "R",
            description = "Profit asked for, as a fraction of the outlay (default: shop.toml).")
    @Nullable
    BigDecimal targetReturn;

    Terms terms(Settings settings) {
        Currency book = settings.currency();
        Money none = Money.zero(book);
        Money in = Amount.orNull(freight, book, "--freight");
        Money more = Amount.orNull(other, book, "--other");
        return new Terms(
                premiumPct == null ? BigDecimal.ZERO : premiumPct.number(),
                in == null ? none : in,
                more == null ? none : more);
    }

    double confidence(Settings settings) {
        double c = confidence == null ? settings.confidence() : confidence.doubleValue();
        if (!(c > 0 && c < 1)) {
            throw new Usage("--confidence: " + confidence
                    + " is not between 0 and 1, both excluded: nothing is certain, and 0.8 means 4 times in 5");
        }
        return c;
    }

    double targetReturn(Settings settings) {
        double r = targetReturn == null ? settings.targetReturn() : targetReturn.doubleValue();
        if (!(r > -1)) {
            throw new Usage("--target-return: " + targetReturn + " is not above -1; 0.1 means 10 % on the outlay");
        }
        return r;
    }
}
