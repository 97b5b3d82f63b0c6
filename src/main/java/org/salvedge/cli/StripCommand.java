package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set is sold as parts. */
@picocli.CommandLine.Command(
        description = "Record that a set was stripped and sold as parts, or that a part of it brought money.")
final class StripCommand extends ExitCommand {
    @Option(names = "--gross", required = true, paramLabel = "AMOUNT", description = "Takings for its parts.")
    @Nullable
    Amount gross;

    @Option(names = "--fees", paramLabel = "AMOUNT", description = "Marketplace and card fees.")
    @Nullable
    Amount fees;

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Outbound, paid by the shop.")
    @Nullable
    Amount shipping;

    @Option(names = "--tax", paramLabel = "AMOUNT", description = "Tax that stays a cost of the shop.")
    @Nullable
    Amount tax;

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on stripping, packing or listing.")
    @Nullable
    Quantity minutes;

    @Option(names = "--channel", paramLabel = "NAME", description = "Where the parts were sold.")
    @Nullable
    String channel;

    @Option(
            names = "--gone",
            paramLabel = "yes|no",
            arity = "1",
            description = "no: takings for a part of it, the set itself stays (default: yes).")
    @Nullable
    Boolean gone;

    @Override
    ExitKind kind() {
        return ExitKind.STRIPPED;
    }

    @Override
    @Nullable
    Amount gross() {
        return gross;
    }

    @Override
    @Nullable
    Amount fees() {
        return fees;
    }

    @Override
    @Nullable
    Amount shipping() {
        return shipping;
    }

    @Override
    @Nullable
    Amount tax() {
        return tax;
    }

    @Override
    @Nullable
    Quantity minutes() {
        return minutes;
    }

    @Override
    @Nullable
    String channel() {
        return channel;
    }

    @Override
    @Nullable
    Boolean gone() {
        return Boolean.FALSE.equals(gone) ? gone : null;
    }
}
