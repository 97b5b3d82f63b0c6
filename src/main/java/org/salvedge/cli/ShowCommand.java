package org.salvedge.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.FactColumns;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.UnitId;
import org.salvedge.yield.SetAccount;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Everything known of a set, a lot, or one entry. */
@picocli.CommandLine.Command(
        description = "Show everything known of a set or a lot, in order of time; or one entry and what became of it.",
        footer = {"", "Example: salvedge show L0042-007"})
final class ShowCommand extends Command {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    @Parameters(
            arity = "0..1",
            paramLabel = "UNIT|LOT",
            description = "A lot's name, or a set's label or enough of it.")
    @Nullable
    String name;

    @Option(names = "--entry", paramLabel = "N", description = "One entry by its number.")
    @Nullable
    Long entry;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description = "Only what had happened and had been recorded by that day's end.")
    @Nullable
    LocalDate asOf;

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if ((name == null) == (entry == null)) {
            throw new Usage("name a set or a lot, or give --entry N");
        }
        if (entry != null && asOf != null) {
            throw new Usage("--as-of: an entry tells itself what became of it and when");
        }
        if (format == Format.CSV) {
            throw new Usage("--format: show prints table or json; `salvedge export` writes CSV");
        }
        try (Ledger ledger = session.shop().read()) {
            if (entry != null) {
                entry(session, ledger, entry);
            } else if (name != null) {
                about(session, ledger, name);
            }
        }
        return Status.DONE;
    }

    private void about(Session session, Ledger ledger, String typed) {
        AsOfView view = new AsOfView(ledger, asOf, session.shop().settings().zone());
        Accounts accounts = new Accounts(session, view);
        LotId label = label(typed);
        if (ledger.lot(label).isPresent()) {
            Lot lot = view.lot(label).orElseThrow(() -> new Refused("lot " + label + " was not on record on " + asOf));
            List<SetAccount> made = accounts.of(lot, ledger.unitsOf(label));
            print(session, view.entriesOf(label), made, Map.of(), () -> accounts.say(lot, made));
            return;
        }
        UnitId unit = UnitPick.unit(ledger, typed);
        List<Entry> entries = view.entriesOf(unit);
        Optional<Lot> lot = AsOfView.setIn(entries).flatMap(set -> view.lot(set.lot()));
        if (lot.isEmpty()) {
            throw new Refused("set " + unit
                    + (asOf == null
                            ? " or its lot is not on record: salvedge audit"
                            : " was not on record on " + asOf));
        }
        List<SetAccount> made = accounts.of(lot.get(), List.of(unit));
        boolean forSale = made.get(0).standing() == SetAccount.Standing.PASSED && asOf == null;
        Map<String, @Nullable Object> selling = forSale && format == Format.JSON
                ? Map.of(
                        "selling", new Selling(session, ledger).json(made.get(0).set(), entries))
                : Map.of();
        print(session, entries, made, selling, () -> {
            accounts.say(made.get(0));
            String distance = Distance.words(made.get(0).set());
            if (distance != null && !made.get(0).standing().isFinal()) {
                session.say(distance);
            }
            boolean onBench = made.get(0).standing() == SetAccount.Standing.ON_BENCH && asOf == null;
            if (onBench && ledger.nextAttempt() <= BenchPlan.QUICKLY_READ) {
                String ahead = new BenchStops(BenchPlan.of(session, ledger, null, 0)).take(unit);
                if (ahead != null) {
                    session.say("Next turn: " + ahead);
                }
            }
            if (forSale) {
                new Selling(session, ledger).say(made.get(0).set(), entries);
            }
        });
    }

    private void print(
            Session session,
            List<Entry> entries,
            List<SetAccount> made,
            Map<String, @Nullable Object> more,
            Runnable sayAccounts) {
        if (format == Format.JSON) {
            Map<String, @Nullable Object> json = json(session, entries, made);
            json.putAll(more);
            session.json(json);
            return;
        }
        entries.forEach(e -> session.say(line(e)));
        sayAccounts.run();
    }

    private static Map<String, @Nullable Object> json(Session session, List<Entry> entries, List<SetAccount> made) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("entries", entries.stream().map(e -> json(e, session)).toList());
        List<Map<String, @Nullable Object>> units = new ArrayList<>();
        for (SetAccount a : made) {
            Map<String, @Nullable Object> unit = new LinkedHashMap<>();
            unit.put("unit", a.set().unit());
            unit.put("now", a.standing().name().toLowerCase(Locale.ROOT));
            unit.put("minutes", a.minutes());
            unit.put("net", a.net());
            unit.put("landed", a.landed());
            unit.put("margin", a.standing().isFinal() ? a.margin() : null);
            units.add(unit);
        }
        json.put("units", units);
        return json;
    }

    private static LotId label(String typed) {
        try {
            return new LotId(typed);
        } catch (IllegalArgumentException e) {
            throw new Refused("\"" + typed + "\" is neither a lot nor a set: " + e.getMessage());
        }
    }

    static String line(Entry e) {
        StringBuilder line = new StringBuilder("entry " + e.number() + ": ");
        Fact fact = e.fact();
        line.append(fact == null ? "takes entry " + e.supersedes() + " back" : EntryDay.of(fact) + EntryText.of(fact));
        if (fact != null && e.supersedes() > 0) {
            line.append(" [in place of entry ").append(e.supersedes()).append(']');
        }
        if (e.why() != null) {
            line.append(" [why: ").append(e.why()).append(']');
        }
        if (e.supersededBy() > 0) {
            line.append(" [no longer: see entry ").append(e.supersededBy()).append(']');
        }
        return line.toString();
    }

    private void entry(Session session, Ledger ledger, long number) {
        Entry e = ledger.entry(number).orElseThrow(() -> new Refused("there is no entry " + number));
        if (format == Format.JSON) {
            session.json(json(e, session));
            return;
        }
        session.say(line(e));
        session.say("  recorded: " + recorded(e, session.shop().settings().zone()));
        if (e.fact() != null) {
            FactColumns.of(e.fact()).forEach((column, value) -> {
                if (!value.isEmpty()) {
                    session.say("  " + column + ": " + value);
                }
            });
        }
        for (long next = e.supersededBy(); next > 0; ) {
            Entry later = ledger.entry(next).orElseThrow();
            session.say("then " + line(later));
            next = later.supersededBy();
        }
    }

    private static String recorded(Entry e, ZoneId zone) {
        return e.recordedAt() == null
                ? "came by import, counts as recorded on the day it happened"
                : TIME.format(e.recordedAt().atZone(zone));
    }

    private static Map<String, @Nullable Object> json(Entry e, Session session) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("entry", e.number());
        json.put("stands", e.stands());
        json.put("supersedes", e.supersedes() == 0 ? null : e.supersedes());
        json.put("superseded_by", e.supersededBy() == 0 ? null : e.supersededBy());
        json.put("why", e.why());
        json.put(
                "recorded_at",
                e.recordedAt() == null
                        ? null
                        : e.recordedAt()
                                .atZone(session.shop().settings().zone())
                                .toLocalDateTime()
                                .withNano(0)
                                .toString());
        Fact fact = e.fact();
        if (fact != null) {
            json.put("text", EntryText.of(fact));
            json.put("columns", FactColumns.of(fact));
        }
        return json;
    }
}
