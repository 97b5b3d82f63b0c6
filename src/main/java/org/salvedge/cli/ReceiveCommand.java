package org.salvedge.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.manifest.ListedSet;
import org.salvedge.manifest.Manifest;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Intake;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Missing;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The pallet is here: books the lot and its sets from the seller's list. */
@picocli.CommandLine.Command(
        description =
                "Book a lot from the seller's list: labels, families, shortfalls, extras, landed cost of each set.",
        footer = {
            "",
            "--missing: a line of the list, as the spreadsheet shows it; x2 where two of the sets of that line are missing, the",
            "sheet before it where several sheets have that line: --missing 14,20x2,\"Pallet 2\"!7. Set panels are glass: look",
            "for cracks before a pallet is turned; leaking or swollen parts are waste.",
            "",
            "Example: salvedge receive harbour-0312.xlsx --lot L0107 --supplier Tidewell --price 3900"
        })
final class ReceiveCommand extends Command {
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    @Parameters(paramLabel = "FILE", description = "The seller's list.")
    Path file = Path.of("");

    @Option(
            names = "--lot",
            required = true,
            paramLabel = "LOT",
            description = "The shop's name for the lot, as in L0042.")
    String lot = "";

    @Option(names = "--supplier", required = true, paramLabel = "NAME", description = "Who sold it.")
    String supplier = "";

    @Option(
            names = "--price",
            required = true,
            paramLabel = "AMOUNT",
            description = "Paid to the seller; at an auction, the hammer price.")
    @Nullable
    Amount price;

    @Option(names = "--on", paramLabel = "DATE", description = "Day of purchase (default: today).")
    @Nullable
    LocalDate on;

    @Option(
            names = "--received-on",
            paramLabel = "DATE",
            description = "Day it arrived (default: the day of purchase).")
    @Nullable
    LocalDate receivedOn;

    @Option(names = "--premium", paramLabel = "AMOUNT", description = "Buyer's premium and auction fees.")
    @Nullable
    Amount premium;

    @Option(names = "--premium-pct", paramLabel = "X", description = "The same in per cent of the price.")
    @Nullable
    BigDecimal premiumPct;

    @Option(names = "--freight", paramLabel = "AMOUNT", description = "Transport in.")
    @Nullable
    Amount freight;

    @Option(names = "--other", paramLabel = "AMOUNT", description = "Unrecoverable tax, pallets.")
    @Nullable
    Amount other;

    @Option(
            names = "--minutes",
            paramLabel = "N",
            description = "Labour on the lot as a whole: unloading, counting, sorting.")
    @Nullable
    Quantity minutes;

    @Option(names = "--currency", paramLabel = "CODE", description = "Currency of these amounts (default: the book's).")
    @Nullable
    String currency;

    @Option(names = "--rate", paramLabel = "R", description = "Book-currency units for one unit of it.")
    @Nullable
    BigDecimal rate;

    @Option(
            names = "--basis",
            paramLabel = "equal|area|value",
            description = "How the landed cost is shared (default: shop.toml).")
    @Nullable
    Basis basis;

    @Option(
            names = "--missing",
            paramLabel = "[SHEET!]LINE[xN],...",
            description = "Sets on the list that were not on the pallet.")
    List<String> missing = new ArrayList<>();

    @Option(
            names = "--extra",
            arity = "1..*",
            paramLabel = "MODEL",
            description = "Sets on the pallet that are not on the list, by model.")
    List<String> extra = new ArrayList<>();

    @Option(names = "--strict", description = "Refuse the list if anything in it has a problem.")
    boolean strict;

    @Option(
            names = "--password",
            paramLabel = "TEXT",
            description = "For a protected workbook; at a terminal it is asked for.")
    @Nullable
    String password;

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if (format == Format.CSV) {
            throw new Usage("--format: receive prints table or json");
        }
        Path source = session.file(file);
        Lot booked;
        Received received;
        try (Ledger ledger = session.shop().open()) {
            booked = terms(session);
            Manifest manifest = SellersList.read(session, file, password);
            requireNew(ledger, manifest);
            requireUsable(manifest);
            List<TvSet> sets = sets(session, ledger, booked, manifest);
            KeptFile kept = KeptFile.copy(source, session.shop().lots(), lot, manifest.sha256());
            Lot noted = Receipt.noted(booked, manifest);
            boolean done = false;
            try {
                ledger.act(() -> {
                    List<Long> numbers = record(ledger, noted, sets, manifest);
                    kept.settle();
                    return numbers;
                });
                done = true;
            } finally {
                if (!done) {
                    kept.drop();
                }
            }
            lostBids(session, ledger, manifest);
            received = new Received(noted, ledger.setsOf(noted.lot()), manifest, kept.place(), new ArrayList<>());
        }
        boolean sheets = sheets(session, received);
        Receipt.print(session, received, format);
        return sheets && received.manifest().problems().isEmpty() ? Status.DONE : Status.PROBLEMS;
    }

    /** What was booked, and the files written for it. */
    record Received(Lot lot, List<TvSet> sets, Manifest manifest, Path kept, List<Path> sheets) {}

    /** Labels and a bench sheet; the lot is booked whether or not they can be written. */
    private static boolean sheets(Session session, Received received) {
        if (received.sets().stream().noneMatch(TvSet::arrived)) {
            return true;
        }
        SheetFiles files = new SheetFiles(session);
        List<String> lot = List.of(received.lot().lot().value());
        try {
            received.sheets().add(files.labels(lot, null));
            received.sheets().add(files.bench(lot, 0, null));
            return true;
        } catch (LedgerFailure e) {
            session.remark(
                    "the lot is booked, but " + e.getMessage() + "; then: salvedge sheet " + lot.get(0) + " --labels");
            return false;
        }
    }

    private Lot terms(Session session) {
        Currency book = session.shop().settings().currency();
        Currency paid = currency == null ? book : currency(currency);
        if (!paid.equals(book) && rate == null) {
            throw new Usage("--rate: missing; how many " + book + " (the book's currency) is one " + paid + "?");
        }
        if (paid.equals(book) && rate != null && rate.compareTo(BigDecimal.ONE) != 0) {
            throw new Usage(
                    "--rate: " + paid + " is the book's own currency; leave the rate out or name another --currency");
        }
        if (premium != null && premiumPct != null) {
            throw new Usage("--premium and --premium-pct: give one of them");
        }
        if (premiumPct != null && (premiumPct.signum() < 0 || premiumPct.compareTo(HUNDRED) > 0)) {
            throw new Usage("--premium-pct: \"" + premiumPct.toPlainString() + "\" is not a percentage from 0 to 100");
        }
        if (basis == Basis.GIVEN) {
            throw new Usage("--basis: a lot that is received is shared by equal, area or value");
        }
        Money hammer = java.util.Objects.requireNonNull(price).in(paid, "--price");
        Money fee = premiumPct == null
                ? Amount.orNull(premium, paid, "--premium")
                : hammer.times(premiumPct.divide(HUNDRED), RoundingMode.HALF_UP);
        try {
            return new Lot(
                    new LotId(lot),
                    supplier.strip(),
                    on == null ? session.today() : on,
                    paid,
                    paid.equals(book) ? null : rate,
                    hammer,
                    fee,
                    Amount.orNull(freight, paid, "--freight"),
                    Amount.orNull(other, paid, "--other"),
                    minutes,
                    receivedOn,
                    basis,
                    null);
        } catch (IllegalArgumentException e) {
            throw new Refused(String.valueOf(e.getMessage()));
        }
    }

    private static Currency currency(String code) {
        try {
            Currency currency = Currency.getInstance(code);
            Money.zero(currency);
            return currency;
        } catch (IllegalArgumentException e) {
            throw new Usage("--currency: \"" + code + "\" is not a currency of ISO 4217; write it as in EUR");
        }
    }

    private void requireNew(Ledger ledger, Manifest manifest) {
        LotId id = new LotId(lot);
        ledger.lot(id).ifPresent(e -> {
            throw new Refused("lot " + id + " is booked already (entry " + e.number() + "). `salvedge show "
                    + Wording.typed(id.value()) + "` shows it");
        });
        for (Lot booked : ledger.all(Lot.class)) {
            if (Receipt.isOf(booked, manifest)) {
                throw new Refused(manifest.file() + ": this very file was received before, as lot " + booked.lot()
                        + ". `salvedge show " + Wording.typed(booked.lot().value()) + "` shows it");
            }
        }
    }

    private void requireUsable(Manifest manifest) {
        if (manifest.sets().isEmpty()) {
            throw new Refused(manifest.file() + ": no set could be read; nothing was booked", manifest.problems());
        }
        if (strict && !manifest.problems().isEmpty()) {
            throw new Refused(
                    manifest.file() + ": refused for its problems (--strict); nothing was booked", manifest.problems());
        }
    }

    private List<TvSet> sets(Session session, Ledger ledger, Lot booked, Manifest manifest) {
        Intake intake = new Intake(booked, Models.of(session, ledger));
        for (ListedSet s : manifest.sets()) {
            intake.listed(
                    s.sheet(),
                    s.line(),
                    s.maker(),
                    s.model(),
                    s.inches(),
                    s.serial(),
                    s.claimed(),
                    s.claimedText(),
                    s.asking());
        }
        for (String each : missing) {
            Missing.parse(each).forEach(intake::missing);
        }
        extra.forEach(model -> intake.extra(model.strip()));
        return intake.sets();
    }

    private static List<Long> record(Ledger ledger, Lot lot, List<TvSet> sets, Manifest manifest) {
        List<Fact> facts = new ArrayList<>();
        facts.add(lot);
        facts.addAll(sets);
        List<Long> numbers = ledger.record(facts);
        for (Bid bid : ledger.all(Bid.class)) {
            if (manifest.sha256().equals(bid.manifest()) && bid.lot() == null && !Boolean.FALSE.equals(bid.won())) {
                won(ledger, bid, lot);
            }
        }
        return numbers;
    }

    /** What somebody said of a bid stays; that the list has come all the same is said. */
    private void lostBids(Session session, Ledger ledger, Manifest manifest) {
        for (Bid bid : ledger.all(Bid.class)) {
            if (manifest.sha256().equals(bid.manifest()) && Boolean.FALSE.equals(bid.won())) {
                session.remark("note: bid " + bid.number() + " on this list is on record as not won, and stays so."
                        + " If it was won after all: salvedge bid " + Wording.typed(file.toString())
                        + " --won yes --lot " + Wording.typed(lot));
            }
        }
    }

    /** A bid on this very list was won: the lot says at what price. */
    private static void won(Ledger ledger, Bid bid, Lot lot) {
        Entry entry = ledger.bid(bid.number()).orElseThrow();
        Money hammer = lot.rate() == null ? lot.price() : bid.hammer();
        ledger.amend(
                entry.number(),
                new Bid(
                        bid.number(),
                        bid.on(),
                        bid.supplier(),
                        bid.manifest(),
                        bid.sets(),
                        bid.limit(),
                        bid.mean(),
                        bid.p10(),
                        bid.p50(),
                        bid.p90(),
                        true,
                        hammer,
                        lot.lot()),
                "received as lot " + lot.lot());
    }
}
