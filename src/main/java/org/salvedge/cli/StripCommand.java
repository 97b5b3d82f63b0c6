package org.salvedge.cli;

import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Quantity;
import picocli.CommandLine.Option;

/** A set is sold as parts. */
@picocli.CommandLine.Command(
        description = "Record that a set was stripped and sold as parts, or that a part of it brought money.",
        footer = {"", "Example: salvedge strip L0042-007 --gross 35"})
final class StripCommand extends ExitCommand {
    @Option(names = "--gross", required = true, paramLabel = "AMOUNT", description = "Takings for its parts.")
    void gross(Amount gross) {
        this.gross = gross;
    }

    @Option(names = "--fees", paramLabel = "AMOUNT", description = "Marketplace and card fees.")
    void fees(Amount fees) {
        this.fees = fees;
    }

    @Option(names = "--shipping", paramLabel = "AMOUNT", description = "Outbound, paid by the shop.")
    void shipping(Amount shipping) {
        this.shipping = shipping;
    }

    @Option(names = "--tax", paramLabel = "AMOUNT", description = "Tax that stays a cost of the shop.")
    void tax(Amount tax) {
        this.tax = tax;
    }

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on stripping, packing or listing.")
    void minutes(Quantity minutes) {
        this.minutes = minutes;
    }

    @Option(names = "--channel", paramLabel = "NAME", description = "Where the parts were sold.")
    void channel(String channel) {
        this.channel = channel;
    }

    @Option(
            names = "--gone",
            paramLabel = "yes|no",
            arity = "1",
            description = "no: takings for a part of it, the set itself stays (default: yes).")
    void gone(Boolean gone) {
        this.gone = Boolean.FALSE.equals(gone) ? gone : null;
    }

    @Override
    ExitKind kind() {
        return ExitKind.STRIPPED;
    }
}
