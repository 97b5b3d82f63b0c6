package org.salvedge.cli;

import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set goes back to the seller, or was never there and is credited. */
@picocli.CommandLine.Command(
        description =
                "Record that a set went back to the seller of the lot, or that he credits one that never arrived.",
        footer = {"", "Example: salvedge send-back L0042-007 --gross 20"})
final class SendBackCommand extends ExitCommand {
    @Option(names = "--gross", paramLabel = "AMOUNT", description = "The seller's credit (default: 0).")
    void gross(Amount gross) {
        this.gross = gross;
    }

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Transport, paid by the shop.")
    void shipping(Amount shipping) {
        this.shipping = shipping;
    }

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on packing.")
    void minutes(Quantity minutes) {
        this.minutes = minutes;
    }

    @Override
    ExitKind kind() {
        return ExitKind.RETURNED;
    }
}
