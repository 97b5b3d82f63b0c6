package org.salvedge.cli;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Offer;
import org.salvedge.shop.UnitId;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A set's asking price is set. */
@picocli.CommandLine.Command(
        description = "Record the price a set is offered at.",
        footer = {"", "Example: salvedge offer L0042-007 189 --channel web"})
final class OfferCommand extends Recording {
    @Parameters(index = "0", paramLabel = "UNIT", description = "The set's label, or enough of it to be the only one.")
    String unit = "";

    @Parameters(arity = "0..1", index = "1", paramLabel = "AMOUNT", description = "Asking price; or --price.")
    @Nullable
    Amount asked;

    @Option(names = "--price", paramLabel = "AMOUNT", description = "Asking price.")
    @Nullable
    Amount price;

    @Option(names = "--channel", paramLabel = "NAME", description = "Where it is offered.")
    @Nullable
    String channel;

    @Option(names = "--on", paramLabel = "DATE", description = "The day (default: today).")
    @Nullable
    LocalDate on;

    @Override
    List<Put> record(Session session, Ledger ledger) {
        Amount amount = price == null ? asked : price;
        if (amount == null) {
            throw new Usage("missing: --price AMOUNT");
        }
        UnitId set = UnitPick.unit(ledger, unit);
        Offer offer = new Offer(
                set,
                on == null ? session.today() : on,
                amount.in(session.shop().settings().currency(), "--price"),
                channel);
        for (Entry entry : ledger.entriesOf(set)) {
            if (entry.stands()
                    && entry.fact() instanceof Offer same
                    && same.on().equals(offer.on())) {
                return List.of(amend(ledger, entry.number(), offer, "price set again"));
            }
        }
        return put(ledger, List.of(offer));
    }
}
