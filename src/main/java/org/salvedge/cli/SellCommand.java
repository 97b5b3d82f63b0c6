package org.salvedge.cli;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.UnitId;
import picocli.CommandLine.Option;

/** A set is sold. The release checks come first. */
@picocli.CommandLine.Command(
        description = "Record that a set was sold, or several for one sum.",
        footer = {
            "",
            "Before a set is sold: a repaired mains appliance is to be tested for electrical safety by someone entitled to do so;",
            "the former owner's accounts are to be reset; of a masked panel the buyer must be told. What is not on record is asked",
            "for on a terminal; elsewhere the sale is refused unless --unmet gives the reason, which the month's review counts.",
            "",
            "Example: salvedge sell L0042-007 --gross 189 --fees 17 --shipping 19.90 --disclosed"
        })
final class SellCommand extends ExitCommand {
    @Option(
            names = "--gross",
            required = true,
            paramLabel = "AMOUNT",
            description = "Takings, without tax that is passed on.")
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

    @Option(
            names = "--tax",
            paramLabel = "AMOUNT",
            description = "Tax that stays a cost of the shop, as on the margin.")
    void tax(Amount tax) {
        this.tax = tax;
    }

    @Option(names = "--minutes", paramLabel = "N", description = "Minutes spent on packing or listing.")
    void minutes(Quantity minutes) {
        this.minutes = minutes;
    }

    @Option(names = "--channel", paramLabel = "NAME", description = "Where it was sold.")
    void channel(String channel) {
        this.channel = channel;
    }

    @Option(names = "--grade", paramLabel = "A|B|C", description = "Grade it was sold at.")
    void grade(Grade grade) {
        this.grade = grade;
    }

    @Option(names = "--disclosed", description = "The buyer was told of the workaround.")
    boolean disclosed;

    @Option(names = "--safety-tested", description = "It was tested for electrical safety, which is put on record now.")
    boolean safetyTested;

    @Option(names = "--owner-data-reset", description = "The former owner's data are gone, which is put on record now.")
    boolean ownerDataReset;

    @Option(
            names = "--unmet",
            paramLabel = "REASON",
            description = "Sell though a release check is unmet, for this reason.")
    @Nullable
    String unmet;

    /** How one set may go: what was said now, and why a check is left unmet. */
    private record Release(
            boolean tested,
            boolean reset,
            @Nullable Boolean told,
            @Nullable String reason) {}

    private final Map<UnitId, Release> releases = new HashMap<>();

    @Override
    void prepare(Session session, Ledger ledger) {
        if (unmet != null && unmet.isBlank()) {
            throw new Usage("--unmet: give the reason in words");
        }
        for (UnitId unit : UnitPick.units(ledger, units)) {
            releases.put(unit, release(session, unit, checks(ledger.entriesOf(unit))));
        }
    }

    @Override
    List<Put> record(Session session, Ledger ledger) {
        List<UnitId> sets = List.copyOf(UnitPick.units(ledger, units));
        List<Exit> exits = exits(session, ledger, sets);
        List<Put> put = new ArrayList<>();
        for (int i = 0; i < sets.size(); i++) {
            List<Entry> entries = ledger.entriesOf(sets.get(i));
            Release release = Objects.requireNonNull(releases.get(sets.get(i)));
            if (release.tested() || release.reset()) {
                put.add(checked(session, ledger, sets.get(i), entries, release));
            }
            put.addAll(put(ledger, List.of(exits.get(i).released(release.told(), release.reason()))));
        }
        return put;
    }

    private static ReleaseChecks checks(List<Entry> entries) {
        return ReleaseChecks.of(SetNotes.attempts(entries), SetNotes.standing(entries, Comeback.class));
    }

    private Release release(Session session, UnitId unit, ReleaseChecks known) {
        boolean tested = safetyTested && !Boolean.TRUE.equals(known.safetyTested());
        boolean reset = ownerDataReset && !Boolean.TRUE.equals(known.ownerDataReset());
        boolean told = disclosed;
        List<ReleaseChecks.Check> open = known.unmet(tested, reset, told);
        ReleaseQuestions questions = new ReleaseQuestions(session.terminal(), unit);
        String reason = unmet;
        if (!open.isEmpty() && reason == null) {
            List<ReleaseChecks.Check> still = questions.ask(open);
            tested |= open.contains(ReleaseChecks.Check.SAFETY_TESTED)
                    && !still.contains(ReleaseChecks.Check.SAFETY_TESTED);
            reset |= open.contains(ReleaseChecks.Check.OWNER_DATA_RESET)
                    && !still.contains(ReleaseChecks.Check.OWNER_DATA_RESET);
            told |= open.contains(ReleaseChecks.Check.DISCLOSED) && !still.contains(ReleaseChecks.Check.DISCLOSED);
            reason = still.isEmpty() ? null : questions.reason(still);
        } else if (open.isEmpty()) {
            reason = null;
        }
        Boolean toldOnRecord = told ? Boolean.TRUE : known.workaround() ? Boolean.FALSE : null;
        return new Release(tested, reset, toldOnRecord, reason);
    }

    /** Release checks stand with attempts: the latest one is completed, or one without a fix is added. */
    private Put checked(Session session, Ledger ledger, UnitId unit, List<Entry> entries, Release release) {
        Entry latest = entries.stream()
                .filter(e -> e.stands() && e.fact() instanceof Attempt)
                .max(Comparator.comparing((Entry e) -> ((Attempt) fact(e)).startedAt())
                        .thenComparing(e -> ((Attempt) fact(e)).number()))
                .orElse(null);
        boolean sinceBack = latest != null
                && SetNotes.standing(entries, Comeback.class).stream()
                        .noneMatch(c -> c.restocked()
                                && c.on().isAfter(((Attempt) fact(latest))
                                        .startedAt()
                                        .toLocalDate()));
        if (latest != null && sinceBack) {
            return amend(
                    ledger,
                    latest.number(),
                    ((Attempt) fact(latest)).released(release.tested(), release.reset()),
                    "release checks at the sale");
        }
        // On the day of the sale, which may be put on record later: before it the set was still here.
        LocalDateTime now = session.now();
        Attempt check = new Attempt(
                ledger.nextAttempt(),
                unit,
                on == null ? now : on.atTime(now.toLocalTime()),
                null,
                Fault.UNKNOWN,
                Fix.NONE,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "release checks at the sale");
        return put(ledger, List.of(check.released(release.tested(), release.reset())))
                .get(0);
    }

    private static Object fact(Entry entry) {
        return Objects.requireNonNull(entry.fact());
    }

    @Override
    ExitKind kind() {
        return ExitKind.SOLD;
    }
}
