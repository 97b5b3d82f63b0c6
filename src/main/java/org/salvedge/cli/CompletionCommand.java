package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.UnitId;
import org.salvedge.yield.Key;
import picocli.CommandLine.Parameters;

/** Tab completion: prints the script; the script asks back for what only the shop knows. */
@picocli.CommandLine.Command(
        description = "Print the script that completes commands, options, codes and labels with the tab key.",
        customSynopsis = "salvedge completion bash",
        footer = {
            "",
            "For this shell: source <(salvedge completion bash). For good: add that line to ~/.bashrc.",
            "",
            "Example: salvedge completion bash"
        })
final class CompletionCommand extends Command {
    private static final int MOST = 200;

    @Parameters(index = "0", paramLabel = "SHELL", description = "bash.")
    String what = "";

    @Parameters(index = "1", arity = "0..1", hidden = true)
    String beginning = "";

    @Override
    int run(Session session) {
        switch (what) {
            case "bash" -> session.out().print(CompletionScript.text());
            case "faults", "fixes", "keys", "labels", "lots", "suppliers" ->
                words(session).forEach(session::say);
            default -> throw new Usage("completion: \"" + what + "\" is not a shell with a script; there is bash");
        }
        return Status.DONE;
    }

    /** Silent where there is no shop: a tab key is no place for messages. */
    private List<String> words(Session session) {
        try {
            Codes codes = session.shop().settings().codes();
            return switch (what) {
                case "faults" ->
                    codes.faults().keySet().stream().map(Coded::code).toList();
                case "fixes" -> codes.fixes().keySet().stream().map(Coded::code).toList();
                case "keys" -> Key.all().stream().map(Key::code).toList();
                default -> fromLedger(session);
            };
        } catch (Refused | LedgerFailure e) {
            return List.of();
        }
    }

    private List<String> fromLedger(Session session) {
        List<String> words = new ArrayList<>();
        try (Ledger ledger = session.shop().read()) {
            if (what.equals("lots")) {
                ledger.all(Lot.class).stream().map(Lot::lot).map(LotId::value).forEach(words::add);
            } else if (what.equals("suppliers")) {
                ledger.all(Lot.class).stream()
                        .map(Lot::supplier)
                        .distinct()
                        .sorted()
                        .forEach(words::add);
            } else {
                ledger.unitsLike(beginning, MOST).stream()
                        .map(UnitId::value)
                        .filter(u -> u.startsWith(beginning))
                        .forEach(words::add);
            }
        }
        return words;
    }
}
