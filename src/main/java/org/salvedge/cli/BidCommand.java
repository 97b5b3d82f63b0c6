package org.salvedge.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.manifest.Manifest;
import org.salvedge.shop.Bid;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.Predictive;
import org.salvedge.worth.Question;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** After the decision: what the shop would pay, and later what became of it. */
@picocli.CommandLine.Command(
        description = "Keep the limit for a seller's list, and later whether it was won and at what hammer price.",
        footer = {
            "",
            "With a limit, what `worth` says of the lot is kept. The same file again completes its bid. `receive` of a list that",
            "was bid on marks the bid as won by itself.",
            "",
            "Example: salvedge bid inbox/harbour-0312.xlsx --supplier Tidewell --limit 4264"
        })
final class BidCommand extends Recording {
    @Parameters(paramLabel = "FILE", description = "The seller's list.")
    Path file = Path.of("");

    @Option(names = "--limit", paramLabel = "AMOUNT", description = "The most the shop would pay.")
    @Nullable
    Amount limit;

    @Option(names = "--supplier", paramLabel = "NAME", description = "Who sells it.")
    @Nullable
    String supplier;

    @Option(names = "--on", paramLabel = "DATE", description = "Day of the bid (default: today).")
    @Nullable
    LocalDate on;

    @Option(names = "--won", paramLabel = "yes|no", arity = "1", description = "Whether the lot was won.")
    @Nullable
    Boolean won;

    @Option(names = "--hammer", paramLabel = "AMOUNT", description = "What it went for, to whomever.")
    @Nullable
    Amount hammer;

    @Option(names = "--lot", paramLabel = "LOT", description = "The lot it became.")
    @Nullable
    String lot;

    @Option(
            names = "--password",
            paramLabel = "TEXT",
            description = "For a protected workbook; at a terminal it is asked for.")
    @Nullable
    String password;

    private @Nullable Manifest manifest;
    /** What {@code worth} says of the lot, from what was known on the day before. */
    private @Nullable Predictive said;

    @Override
    void prepare(Session session, Ledger ledger) {
        Manifest list = SellersList.read(session, file, password);
        manifest = list;
        if (limit != null && !list.sets().isEmpty()) {
            Settings settings = session.shop().settings();
            LocalDate day = on == null ? session.today() : on;
            Question question = new Question(
                    list.sets().stream().map(Candidate::of).toList(),
                    supplier == null ? null : supplier.strip(),
                    day,
                    settings.draws(),
                    settings.seed());
            said = KeptFit.of(day.minusDays(1), ledger, session, settings)
                    .model()
                    .predict(question)
                    .recovery();
        }
    }

    @Override
    List<Put> record(Session session, Ledger ledger) {
        Manifest list = java.util.Objects.requireNonNull(manifest);
        for (Bid bid : ledger.all(Bid.class)) {
            if (list.sha256().equals(bid.manifest())) {
                Entry entry = ledger.bid(bid.number()).orElseThrow();
                Bid changed = completed(session, bid);
                if (changed.equals(bid)) {
                    throw new Usage("bid " + bid.number() + " on this list is on record (entry " + entry.number()
                            + "); say what is new: --limit, --won, --hammer, --lot");
                }
                return List.of(amend(ledger, entry.number(), changed, "bid completed"));
            }
        }
        Bid first = new Bid(
                ledger.nextBid(),
                on == null ? session.today() : on,
                null,
                list.sha256(),
                list.sets().size(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        if (limit == null && hammer == null) {
            throw new Usage("missing: --limit AMOUNT");
        }
        return put(ledger, List.of(completed(session, first)));
    }

    private Bid completed(Session session, Bid bid) {
        Currency book = session.shop().settings().currency();
        Money most = Amount.orNull(limit, book, "--limit");
        Money price = Amount.orNull(hammer, book, "--hammer");
        return new Bid(
                bid.number(),
                on == null ? bid.on() : on,
                supplier == null ? bid.supplier() : supplier.strip(),
                bid.manifest(),
                bid.sets(),
                most == null ? bid.limit() : most,
                said(bid.mean(), Predictive::mean, book),
                said(bid.p10(), p -> p.quantile(0.1), book),
                said(bid.p50(), p -> p.quantile(0.5), book),
                said(bid.p90(), p -> p.quantile(0.9), book),
                won == null ? bid.won() : won,
                price == null ? bid.hammer() : price,
                lot == null ? bid.lot() : new LotId(lot));
    }

    private @Nullable Money said(@Nullable Money before, ToDoubleFunction<Predictive> figure, Currency book) {
        return said == null
                ? before
                : Money.of(BigDecimal.valueOf(figure.applyAsDouble(said)), book, RoundingMode.HALF_UP);
    }
}
