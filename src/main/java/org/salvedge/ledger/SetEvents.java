package org.salvedge.ledger;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Timeline;
import org.salvedge.shop.Timeline.Impossible;
import org.salvedge.shop.UnitId;

/** The events of one set that stand, and which of them cannot have happened. */
final class SetEvents {
    private final Timeline timeline = new Timeline();
    private final boolean arrived;
    private final LocalDate firstDay;
    private final List<Stored<Attempt>> attempts;
    private final List<Stored<Exit>> exits;
    private final List<Stored<Comeback>> comebacks;

    /** An event and why it cannot have happened. */
    record Clash(Stored<? extends Fact> event, Impossible why) {}

    private SetEvents(
            boolean arrived,
            LocalDate firstDay,
            List<Stored<Attempt>> attempts,
            List<Stored<Exit>> exits,
            List<Stored<Comeback>> comebacks) {
        this.arrived = arrived;
        this.firstDay = firstDay;
        this.attempts = new ArrayList<>(attempts);
        this.exits = new ArrayList<>(exits);
        this.comebacks = new ArrayList<>(comebacks);
    }

    /** Those of a set that stands, with its lot; empty otherwise. */
    static Optional<SetEvents> of(UnitId label, Store store) throws SQLException {
        int unit = store.codec().units().find(label.value());
        var set = store.standing(Tables.UNITS, "unit = ?", unit);
        if (set.isEmpty()) {
            return Optional.empty();
        }
        var lot = store.standing(
                Tables.LOTS,
                "lot = ?",
                store.codec().lots().find(set.get(0).fact().lot().value()));
        if (lot.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new SetEvents(
                set.get(0).fact().arrived(),
                lot.get(0).fact().arrivalDay(),
                store.standing(Tables.ATTEMPTS, "unit = ?", unit),
                store.standing(Tables.EXITS, "unit = ?", unit),
                store.standing(Tables.COMEBACKS, "unit = ?", unit)));
    }

    LocalDate firstDay() {
        return firstDay;
    }

    /** The first event that cannot have happened; null if all can. */
    @Nullable
    Clash clash() {
        timeline.start(arrived, (int) firstDay.toEpochDay());
        for (Stored<Attempt> s : attempts) {
            Attempt a = s.fact();
            timeline.attempt(
                    (int) a.startedAt().toLocalDate().toEpochDay(),
                    a.startedAt().toLocalTime().toSecondOfDay(),
                    a.number(),
                    !a.fix().equals(Fix.NONE),
                    a.passed() == null ? -1 : a.passed() ? 1 : 0);
        }
        for (Stored<Exit> s : exits) {
            Exit e = s.fact();
            timeline.exit((int) e.on().toEpochDay(), e.seq(), e.kind(), e.leaves());
        }
        for (Stored<Comeback> s : comebacks) {
            timeline.comeback((int) s.fact().on().toEpochDay(), s.fact().restocked());
        }
        timeline.settle();
        Impossible why = timeline.impossible();
        if (why == null || timeline.impossibleKind() == null) {
            return null;
        }
        int index = timeline.impossibleIndex();
        return new Clash(
                switch (timeline.impossibleKind()) {
                    case ATTEMPT -> attempts.get(index);
                    case EXIT -> exits.get(index);
                    case COMEBACK -> comebacks.get(index);
                },
                why);
    }

    /** All events that could not have happened, taking them away one by one until the rest can. */
    List<Clash> clashes() {
        List<Clash> all = new ArrayList<>();
        for (Clash clash = clash(); clash != null; clash = clash()) {
            all.add(clash);
            attempts.remove(clash.event());
            exits.remove(clash.event());
            comebacks.remove(clash.event());
        }
        return all;
    }
}
