package org.salvedge.cli;

import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set goes to recycling. */
@picocli.CommandLine.Command(
        description = "Record that a set went to recycling.",
        footer = {
            "",
            "Waste electrical equipment, swollen parts and tubes with mercury have their own law.",
            "",
            "Example: salvedge recycle L0042-007 --fees 6"
        })
final class RecycleCommand extends ExitCommand {
    @Option(names = "--gross", paramLabel = "AMOUNT", description = "Takings, where it brought any (default: 0).")
    void gross(Amount gross) {
        this.gross = gross;
    }

    @Option(names = "--fees", paramLabel = "AMOUNT", description = "What recycling it costs.")
    void fees(Amount fees) {
        this.fees = fees;
    }

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Transport, paid by the shop.")
    void shipping(Amount shipping) {
        this.shipping = shipping;
    }

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on it.")
    void minutes(Quantity minutes) {
        this.minutes = minutes;
    }

    @Override
    ExitKind kind() {
        return ExitKind.RECYCLED;
    }
}
