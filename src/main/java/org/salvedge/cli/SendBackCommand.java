package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set goes back to the seller, or was never there and is credited. */
@picocli.CommandLine.Command(
        description =
                "Record that a set went back to the seller of the lot, or that he credits one that never arrived.")
final class SendBackCommand extends ExitCommand {
    @Option(names = "--gross", paramLabel = "AMOUNT", description = "The seller's credit (default: 0).")
    @Nullable
    Amount gross;

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Transport, paid by the shop.")
    @Nullable
    Amount shipping;

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on packing.")
    @Nullable
    Quantity minutes;

    @Override
    ExitKind kind() {
        return ExitKind.RETURNED;
    }

    @Override
    @Nullable
    Amount gross() {
        return gross;
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
