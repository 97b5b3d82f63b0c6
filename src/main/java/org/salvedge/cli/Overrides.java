package org.salvedge.cli;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Settings;
import picocli.CommandLine.Option;

/** Options that override settings of the same name for one run; a mixin. */
final class Overrides {
    @Option(
            names = "--labour",
            paramLabel = "RATE",
            order = 800,
            description = "Cost of an hour at the bench (default: labour_rate of shop.toml).")
    @Nullable
    Amount labour;

    /** Puts them in force for this run. */
    void apply(Session session) {
        Settings s = session.shop().settings();
        BigDecimal rate = labour == null ? s.labourRate() : labour.number();
        session.shop()
                .override(new Settings(
                        s.currency(),
                        s.zone(),
                        rate,
                        s.basis(),
                        s.confidence(),
                        s.targetReturn(),
                        s.draws(),
                        s.seed(),
                        s.pageSize(),
                        s.families(),
                        s.columns(),
                        s.symptoms(),
                        s.codes()));
    }
}
