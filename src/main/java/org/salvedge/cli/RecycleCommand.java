package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set goes to recycling. */
@picocli.CommandLine.Command(
        description = "Record that a set went to recycling.",
        footer = {"", "Waste electrical equipment, swollen parts and tubes with mercury have their own law."})
final class RecycleCommand extends ExitCommand {
    @Option(names = "--gross", paramLabel = "AMOUNT", description = "Takings, where it brought any (default: 0).")
    @Nullable
    Amount gross;

    @Option(names = "--fees", paramLabel = "AMOUNT", description = "What recycling it costs.")
    @Nullable
    Amount fees;

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Transport, paid by the shop.")
    @Nullable
    Amount shipping;

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on it.")
    @Nullable
    Quantity minutes;

    @Override
    ExitKind kind() {
        return ExitKind.RECYCLED;
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
    Quantity minutes() {
        return minutes;
    }
}
