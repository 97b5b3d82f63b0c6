package org.salvedge.cli;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchClock;
import org.salvedge.bench.BenchLine;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.bench.ReleaseChecks.Check;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Money;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * The talk at the bench: lines in, entries out. The terminal stays in its line mode, so that what is scanned or typed while the
 * program works waits in its buffer and is not lost.
 */
final class BenchTalk {
    private final Session session;
    private final Ledger ledger;
    private final @Nullable String technician;
    private final BenchClock clock = new BenchClock();
    private final Deque<Long> recorded = new ArrayDeque<>();
    private final Set<Fault> cautioned = new HashSet<>();
    private final BenchPlan plan;
    private final BenchStops stops;
    private @Nullable TvSet inHand;
    private boolean problems;

    BenchTalk(Session session, Ledger ledger, @Nullable String technician) {
        this.session = session;
        this.ledger = ledger;
        this.technician = technician;
        plan = BenchPlan.of(session, ledger, null, 0);
        stops = new BenchStops(plan);
    }

    int run() {
        if (ledger.nextAttempt() == 1) {
            Cautions.say(session);
        }
        session.say("Scan a label. ? helps, q ends.");
        String line = ask(prompt());
        while (line != null && !line.strip().equals("q")) {
            String next = take(line);
            line = next == null ? ask(prompt()) : next;
        }
        for (UnitId unit : clock.inHand()) {
            session.remark("not recorded: " + unit + ", " + clock.minutes(unit, now()) + " min on its watch");
        }
        return problems ? Status.PROBLEMS : Status.DONE;
    }

    private @Nullable String ask(String question) {
        session.surroundings().out().flush();
        session.surroundings().err().flush();
        return session.terminal().line(question);
    }

    private Instant now() {
        return session.surroundings().clock().instant();
    }

    private String prompt() {
        TvSet set = inHand;
        if (set == null) {
            return "> ";
        }
        Fault fault = clock.fault(set.unit());
        long minutes = clock.minutes(set.unit(), now());
        return set.unit() + " " + minutes + " min" + stops.past(set.unit(), minutes)
                + (fault == null ? "" : " " + fault.code()) + "> ";
    }

    /** Takes one line; returns a line that came in answer to a question but was none. */
    private @Nullable String take(String line) {
        // A scanner may end a label with a tab where it should press Enter.
        String text = line.replace('\t', ' ').strip();
        try {
            return taken(text);
        } catch (IllegalArgumentException | Refused e) {
            problem(String.valueOf(e.getMessage()));
        } catch (LedgerFailure e) {
            problem(e.getMessage() + ". Nothing was recorded: type the line again");
        }
        return null;
    }

    private void problem(String message) {
        problems |= !session.terminal().asks();
        session.remark(message);
    }

    private @Nullable String taken(String text) {
        switch (text) {
            case "" -> {
                return null;
            }
            case "?" -> BenchHelp.say(session);
            case "u" -> {
                return undo();
            }
            case "p" -> pause();
            case "n" -> session.say(stops.next(clock.inHand()));
            default -> {
                return words(text);
            }
        }
        return null;
    }

    private @Nullable String words(String text) {
        UnitId whole = label(text);
        if (whole != null) {
            hold(whole);
            return null;
        }
        String first = text.split(" ", 2)[0];
        String rest = text.substring(first.length()).strip();
        UnitId label = label(first);
        if (label != null) {
            hold(label);
            return rest.isEmpty() ? null : turn(rest);
        }
        TvSet set = inHand;
        if (set == null) {
            hold(UnitPick.unit(ledger, text));
            return null;
        }
        return turn(text);
    }

    /** A label in full; null for anything else. */
    private @Nullable UnitId label(String word) {
        List<UnitId> found = ledger.unitsLike(word, 2);
        boolean whole = found.size() == 1
                && found.get(0).value().toLowerCase(Locale.ROOT).equals(word.toLowerCase(Locale.ROOT));
        return whole ? found.get(0) : null;
    }

    private void hold(UnitId unit) {
        TvSet set = UnitPick.set(UnitPick.entry(ledger, unit));
        inHand = set;
        clock.take(unit, now());
        List<Entry> entries = ledger.entriesOf(unit);
        session.say(unit + ": " + set.maker() + " " + set.model()
                + (set.inches() == null ? "" : ", " + set.inches() + " in") + ", claimed "
                + set.claimed().code()
                + (set.place() == null ? "" : ", at " + set.place())
                + (set.waitingFor() == null ? "" : ", waits for " + set.waitingFor()));
        String gone = SetNotes.gone(entries);
        if (gone != null) {
            session.remark(unit + " has gone: " + gone + ". If it is back, record it with `comeback --restocked`");
        }
        String known = SetNotes.known(set, entries);
        if (!known.isEmpty()) {
            session.say("  " + known);
        }
        String ahead = stops.take(unit);
        if (ahead != null) {
            session.say("  " + ahead);
        }
    }

    private @Nullable String turn(String text) {
        TvSet set = inHand;
        if (set == null) {
            throw new Refused("no set is in hand: scan a label first");
        }
        Fault known = clock.fault(set.unit());
        BenchLine line = BenchLine.parse(text, known != null, codes(set, text, known));
        Fault fault = line.fault() == null ? known : line.fault();
        if (fault == null) {
            throw new IllegalArgumentException("type the fault found");
        }
        if (line.fix() == null) {
            found(set, fault);
            return null;
        }
        return record(set, fault, line);
    }

    private BenchLine.Codes codes(TvSet set, String text, @Nullable Fault known) {
        var codes = session.shop().settings().codes();
        List<Fault> faults = List.copyOf(codes.faults().keySet());
        List<Fix> fixes = List.copyOf(codes.fixes().keySet());
        Fault fault = known;
        if (fault == null) {
            fault = BenchLine.parse(text.split(" ", 2)[0], false, new BenchLine.Codes(faults, fixes, null))
                    .fault();
        }
        return new BenchLine.Codes(
                faults, fixes, fault == null ? null : plan.usual().of(set.family(), fault));
    }

    private void found(TvSet set, Fault fault) {
        clock.found(set.unit(), fault, now());
        Fix fix = plan.usual().of(set.family(), fault);
        session.say("  " + fault.code() + (fix == null ? "" : "; . = " + fix.code())
                + stops.found(set.unit(), fault, clock.minutes(set.unit(), now())));
        BenchHelp.caution(session, fault, cautioned);
    }

    private @Nullable String record(TvSet set, Fault fault, BenchLine line) {
        EnumSet<Check> done = EnumSet.noneOf(Check.class);
        String other = null;
        if (Boolean.TRUE.equals(line.passed())) {
            String answer = release(set.unit(), line);
            if (answer != null && !answer.strip().matches("[so ]*")) {
                other = answer;
            } else if (answer != null) {
                if (answer.contains("s")) {
                    done.add(Check.SAFETY_TESTED);
                }
                if (answer.contains("o")) {
                    done.add(Check.OWNER_DATA_RESET);
                }
            }
        }
        Instant now = now();
        UnitId unit = set.unit();
        boolean diagnosed = clock.fault(unit) != null;
        long fixing = diagnosed ? clock.fixMinutes(unit, now) : clock.minutes(unit, now);
        long finding = diagnosed ? clock.diagnosisMinutes(unit, now) : 0;
        boolean noFix = line.fix() == null || line.fix().equals(Fix.NONE);
        if (noFix) {
            finding += fixing;
            fixing = 0;
        }
        boolean typed = line.minutes() != null;
        Money typedParts = line.parts() == null
                ? null
                : new Amount(line.parts()).in(session.shop().settings().currency(), "parts");
        Money parts = PartUse.cost(ledger, line.partLabels(), typedParts);
        Attempt attempt = new Attempt(
                ledger.nextAttempt(),
                unit,
                LocalDateTime.ofInstant(
                                clock.taken(unit), session.shop().settings().zone())
                        .withNano(0),
                technician,
                fault,
                java.util.Objects.requireNonNull(line.fix()),
                typed ? (noFix ? line.minutes() : line.diagnosis()) : BenchClock.known(finding),
                typed ? (noFix ? null : line.minutes()) : BenchClock.known(fixing),
                parts,
                line.passed(),
                line.soakHours(),
                null,
                null,
                line.grade(),
                line.safetyTested() || done.contains(Check.SAFETY_TESTED) ? Boolean.TRUE : null,
                line.ownerDataReset() || done.contains(Check.OWNER_DATA_RESET) ? Boolean.TRUE : null,
                line.note());
        List<Recording.Put> put = ledger.act(() -> {
            List<Recording.Put> lines = new ArrayList<>(Recording.put(ledger, List.of(attempt)));
            lines.addAll(PartUse.use(ledger, line.partLabels(), attempt));
            return lines;
        });
        long entry = put.get(0).entry();
        recorded.push(entry);
        String past = stops.recorded(attempt);
        clock.done(unit);
        inHand = null;
        put.forEach(p -> session.say("entry " + p.entry() + ": " + p.words()));
        if (past != null) {
            session.remark(past);
        }
        if (!typed && finding + fixing == 0) {
            session.remark("nothing on the watch, so minutes are not known: u, then the line again with 45m");
        }
        if (Boolean.TRUE.equals(line.passed()) && attempt.fix().equals(Fix.CONTACT_MASK)) {
            session.remark("A mask is a workaround: the buyer must be told (`sell` asks).");
        }
        BenchRelease.remind(session, ledger, attempt);
        return other;
    }

    /** Asks for the release checks that are open and were not said; null where there is nothing to ask. */
    private @Nullable String release(UnitId unit, BenchLine line) {
        List<Check> open = ReleaseChecks.of(
                        SetNotes.attempts(ledger.entriesOf(unit)),
                        SetNotes.standing(ledger.entriesOf(unit), org.salvedge.shop.Comeback.class))
                .unmet(line.safetyTested(), line.ownerDataReset(), true);
        if (open.isEmpty() || !session.terminal().asks()) {
            return null;
        }
        return ask("  safety tested (s), owner data reset (o)? ");
    }

    private void pause() {
        clock.pause(now());
        session.say(inHand == null ? "No watch runs." : "The watch of " + inHand.unit() + " stands; scan it to go on.");
        inHand = null;
    }

    /** Takes the latest turn back; returns a line that came in answer to a question but was none. */
    private @Nullable String undo() {
        Long entry = recorded.peek();
        if (entry == null) {
            throw new Refused("nothing was recorded here yet; `salvedge undo` takes earlier entries back");
        }
        TvSet set = inHand;
        Fact fact = ledger.entry(entry).map(Entry::fact).orElse(null);
        String what = fact instanceof Attempt a
                ? EntryText.of(a) + ", of " + a.startedAt().toLocalTime().truncatedTo(ChronoUnit.MINUTES)
                : "";
        if (set != null && fact instanceof Attempt a && !a.unit().equals(set.unit())) {
            if (!session.terminal().asks()) {
                throw new Refused("u would take back entry " + entry + ", " + what + ", while " + set.unit()
                        + " is in hand; p first, then u, or `salvedge undo " + entry + "`");
            }
            session.say("entry " + entry + ": " + what);
            String answer = ask("  not " + set.unit() + ", which is in hand: take it back (y, n)? ");
            if (answer == null || !answer.strip().equals("y")) {
                session.say("entry " + entry + " stays");
                return answer == null || answer.isBlank() || answer.strip().equals("n") ? null : answer;
            }
        }
        Map<Long, Long> undone = ledger.undoAct(entry, "slip at the bench");
        recorded.poll();
        undone.forEach((old, number) -> session.say(
                "entry " + number + ": takes entry " + old + " back" + (old.equals(entry) ? ", " + what : "")));
        return null;
    }
}
