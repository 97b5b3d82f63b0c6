package org.salvedge.cli;

import org.salvedge.shop.ExitKind;
import picocli.CommandLine.Option;

/** A set cannot be found, or broke in the shop. */
@picocli.CommandLine.Command(
        description = "Record that a set was lost: stolen, dropped, not to be found.",
        footer = {"", "Example: salvedge lost L0042-007"})
final class LostCommand extends ExitCommand {
    @Option(names = "--gross", paramLabel = "AMOUNT", description = "What an insurer paid for it (default: 0).")
    void gross(Amount gross) {
        this.gross = gross;
    }

    @Override
    ExitKind kind() {
        return ExitKind.LOST;
    }
}
