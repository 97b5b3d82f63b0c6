package org.salvedge.ledger;

import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Adds entries within a transaction of the caller: new facts, amendments, undoings. */
final class Recorder {
    private final Store store;
    private final References references;
    private final Shares shares;
    private final FactCheck check;
    private final long now;
    private final long first;
    private long next;

    Recorder(Store store, Settings settings, Clock clock) throws SQLException {
        this.store = store;
        references = new References(store);
        shares = new Shares(store, settings.basis());
        check = new FactCheck(LocalDate.now(clock.withZone(settings.zone())), settings.currency(), settings.codes());
        now = clock.millis();
        first = store.lastEntry() + 1;
        next = first;
    }

    List<Long> record(List<? extends Fact> facts) throws SQLException {
        if (facts.isEmpty()) {
            return List.of();
        }
        for (Fact fact : facts) {
            requireGood(fact, true);
        }
        List<Long> numbers = new ArrayList<>();
        Set<UnitId> touched = new LinkedHashSet<>();
        for (Fact fact : shares.filled(facts)) {
            requireNew(fact);
            references.require(fact);
            store.insert(next, fact);
            numbers.add(next++);
            addSet(touched, fact);
        }
        for (UnitId unit : touched) {
            requirePossible(unit);
        }
        Batches.add(store.connection(), first, next - 1, now, Batches.RECORD);
        return numbers;
    }

    long amend(long entry, Fact amended, String why) throws SQLException {
        Fact old = standing(entry).fact();
        Fact changed = Identity.filled(old, amended);
        requireGood(changed, false);
        Identity.requireSame(old, changed);
        Identity.requireDigits(old, changed, references);
        Batches.supersede(store.connection(), entry, next, why);
        references.require(changed);
        requireNew(changed);
        store.insert(next, changed);
        long number = next++;
        Set<UnitId> pinned = Identity.pinned(old, changed);
        settle(old, changed, pinned, why);
        if (!pinned.isEmpty()) {
            nowGiven(Identity.lotOf(old), why);
        }
        Batches.add(store.connection(), first, next - 1, now, Batches.AMEND);
        return number;
    }

    long undo(long entry, String why) throws SQLException {
        return undo(List.of(entry), why).get(0);
    }

    /** Takes entries back together, the latest first: what rests on one of them may be another. Each is a batch of its own. */
    List<Long> undo(List<Long> entries, String why) throws SQLException {
        List<Long> numbers = new ArrayList<>();
        List<Fact> undone = new ArrayList<>();
        List<@Nullable Fact> backs = new ArrayList<>();
        long start = next;
        for (long entry : entries) {
            if (next > start) {
                Batches.add(store.connection(), start, next - 1, now, Batches.UNDO);
                start = next;
            }
            undone.add(standing(entry).fact());
            long number = next++;
            numbers.add(number);
            Fact back = before(entry);
            backs.add(back);
            Batches.supersede(store.connection(), entry, number, why);
            if (back != null) {
                references.require(back);
                requireNew(back);
                store.insert(number, back);
            }
            for (long followed : new Corrections(store.connection()).followersOf(entry)) {
                takeBack(followed, why);
            }
        }
        for (int i = 0; i < undone.size(); i++) {
            if (backs.get(i) == null) {
                requireNothingRests(entries.get(i), undone.get(i));
            }
        }
        for (int i = 0; i < undone.size(); i++) {
            settle(undone.get(i), backs.get(i), Set.of(), why);
        }
        Batches.add(store.connection(), start, next - 1, now, Batches.UNDO);
        return numbers;
    }

    /** What changed only because an undone amendment did, changes back, if nothing came after it. */
    private void takeBack(long entry, String why) throws SQLException {
        long old = Database.number(store.connection(), "SELECT old FROM supersede WHERE new = ?", 0, entry);
        Optional<Stored<? extends Fact>> back = store.entry(old);
        if (back.isPresent() && store.stands(entry)) {
            replace(entry, back.get().fact(), why);
        }
    }

    private void replace(long entry, Fact by, String why) throws SQLException {
        Batches.supersede(store.connection(), entry, next, why);
        store.insert(next++, by);
    }

    /** A lot of which a share was changed on purpose has shares that are given. */
    private void nowGiven(@Nullable LotId id, String why) throws SQLException {
        var lot = id == null ? Optional.<Stored<Lot>>empty() : references.lot(id);
        if (lot.isPresent() && lot.get().fact().basis() != Basis.GIVEN) {
            replace(lot.get().entry(), lot.get().fact().withBasis(Basis.GIVEN), why);
        }
    }

    /** What an undoing of that entry brings back; null where it was the first of its thing. */
    private @Nullable Fact before(long entry) throws SQLException {
        long back = new Corrections(store.connection()).before(entry);
        Optional<Stored<? extends Fact>> row = back == 0 ? Optional.empty() : store.entry(back);
        return row.isPresent() ? row.get().fact() : null;
    }

    private Stored<? extends Fact> standing(long entry) throws SQLException {
        long by = store.supersededBy(entry);
        if (by != 0) {
            throw new Refused("entry " + entry + " was already superseded by entry " + by + "; take that one");
        }
        Optional<Stored<? extends Fact>> row = store.entry(entry);
        if (row.isPresent()) {
            return row.get();
        }
        long old = Database.number(store.connection(), "SELECT old FROM supersede WHERE new = ?", 0, entry);
        throw new Refused(
                old == 0
                        ? "there is no entry " + entry
                        : "entry " + entry + " took entry " + old + " back; record it anew instead");
    }

    private void requireGood(Fact fact, boolean isNew) {
        try {
            check.check(fact);
            if (isNew) {
                Labels.requireSeen(fact);
            }
        } catch (BadCell e) {
            throw new Refused(describe(fact) + ": " + e.problem() + ". " + e.advice());
        }
    }

    private static <F extends Fact> String describe(F fact) {
        return Tables.of(fact).describe(fact);
    }

    private void requireNew(Fact fact) throws SQLException {
        var same = store.sameKey(fact);
        if (same.isPresent()) {
            throw new Refused(describe(same.get().fact()) + " is on record already (entry "
                    + same.get().entry() + "); amend that one");
        }
    }

    private static void addSet(Set<UnitId> sets, @Nullable Fact fact) {
        UnitId unit = fact == null ? null : References.setOf(fact);
        if (unit != null) {
            sets.add(unit);
        }
    }

    /** After a correction: shares add up again, and every set it touches has a possible history. */
    private void settle(Fact old, @Nullable Fact changed, Set<UnitId> pinned, String why) throws SQLException {
        Set<UnitId> touched = new LinkedHashSet<>();
        addSet(touched, old);
        addSet(touched, changed);
        LotId lot = Identity.lotOf(old);
        if (lot != null) {
            for (var mended : shares.mended(lot, pinned).entrySet()) {
                replace(mended.getKey().entry(), mended.getValue(), why);
            }
            if (!(old instanceof TvSet)) {
                references.unitsOf(lot).forEach(s -> touched.add(s.fact().unit()));
            }
        }
        for (UnitId unit : touched) {
            requirePossible(unit);
        }
    }

    private void requirePossible(UnitId unit) throws SQLException {
        Optional<SetEvents> events = SetEvents.of(unit, store);
        if (events.isEmpty()) {
            return;
        }
        SetEvents.Clash clash = events.get().clash();
        if (clash != null) {
            String when = " (entry " + clash.event().entry() + ")";
            throw new Refused("the " + describe(clash.event().fact())
                    + (clash.event().entry() < first ? when : "") + " "
                    + clash.why().words() + arrivalNote(clash, events.get()));
        }
    }

    private static String arrivalNote(SetEvents.Clash clash, SetEvents events) {
        return switch (clash.why()) {
            case ATTEMPT_BEFORE_ARRIVAL, EXIT_BEFORE_ARRIVAL ->
                ", " + events.firstDay() + ". Mend the day, or amend the day on which its lot was received";
            case ATTEMPT_AFTER_EXIT ->
                ". If it is back, record its comeback first (--restocked); else mend day or label";
            case COMEBACK_WITHOUT_SALE -> ". Record its sale first, or mend day or label";
            case NOT_ARRIVED, EXIT_AFTER_EXIT -> "";
        };
    }

    private void requireNothingRests(long entry, Fact undone) throws SQLException {
        List<String> names = new ArrayList<>();
        for (Stored<? extends Fact> later : references.restingOn(undone)) {
            names.add("entry " + later.entry() + " (" + describe(later.fact()) + ")");
        }
        UnitId unit = References.setOf(undone);
        if (names.isEmpty() && unit != null) {
            Optional<SetEvents> events = SetEvents.of(unit, store);
            for (SetEvents.Clash clash : events.isPresent() ? events.get().clashes() : List.<SetEvents.Clash>of()) {
                names.add("entry " + clash.event().entry() + " ("
                        + describe(clash.event().fact()) + ")");
            }
        }
        if (!names.isEmpty()) {
            int shown = Math.min(names.size(), 10);
            String more = names.size() > shown ? " and " + (names.size() - shown) + " more" : "";
            throw new Refused("entry " + entry + " cannot be undone: later entries rest on it: "
                    + String.join(", ", names.subList(0, shown)) + more + "; undo those first");
        }
    }
}
