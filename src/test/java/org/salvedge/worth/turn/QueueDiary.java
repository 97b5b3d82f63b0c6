package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;

/** What an invented shop writes down. */
final class QueueDiary {
    private static final long MICRO = 1_000_000;

    private final QueueWorld world;
    private final List<QueueWorld.Set> arrived = new ArrayList<>();
    private final List<Turn> turns = new ArrayList<>();

    /** One turn: what was found and tried, and that the set left after it. */
    private record Turn(int set, int day, boolean tried, boolean saved, double look, double fix) {}

    QueueDiary(QueueWorld world) {
        this.world = world;
    }

    int arrive(QueueWorld.Set set) {
        arrived.add(set);
        return arrived.size() - 1;
    }

    void turn(int set, int day, boolean tried, boolean saved, double look, double fix) {
        turns.add(new Turn(set, day, tried, saved, look, fix));
    }

    History history() {
        HistoryBuilder b = History.builder(java.util.Currency.getInstance("EUR"));
        int lot = -1;
        for (int i = 0; i < arrived.size(); i++) {
            QueueWorld.Set s = arrived.get(i);
            if (s.lot() != lot) {
                lot = s.lot();
                b.lot("L" + lot, b.suppliers().number("S" + s.supplier()), s.day(), s.day(), 0, -1);
            }
            b.set(
                    i,
                    b.lotNames().number("L" + lot),
                    b.families().number(QueueWorld.family(s.family())),
                    b.makers().number("M"),
                    b.models().number(QueueWorld.family(s.family())),
                    b.claims().number(QueueWorld.CLAIMS.get(s.claim())),
                    Math.round(world.inches[s.family()] * MICRO),
                    -1,
                    -1,
                    -1,
                    History.ARRIVED | History.ON_MANIFEST,
                    -1,
                    0);
            b.label("U" + i);
        }
        for (int a = 0; a < turns.size(); a++) {
            Turn t = turns.get(a);
            QueueWorld.Set s = arrived.get(t.set());
            b.attempt(
                    t.set(),
                    t.day(),
                    36_000,
                    a + 1,
                    b.faults().number(QueueWorld.FAULTS.get(s.fault())),
                    b.fixes().number(t.tried() ? "reseat_cable" : "none"),
                    -1,
                    t.saved() ? 1 : t.tried() ? 0 : -1,
                    -1,
                    Math.round(t.look() * MICRO),
                    t.tried() ? Math.round(t.fix() * MICRO) : -1,
                    t.tried() ? Math.round(100 * s.parts()) : 0);
            double gross = t.saved() ? s.sold() : s.stripped();
            b.exit(
                    t.set(),
                    t.day(),
                    1,
                    (t.saved() ? ExitKind.SOLD : ExitKind.STRIPPED).ordinal(),
                    1,
                    Math.round(100 * gross),
                    t.saved() ? Math.round(100 * gross * (QueueWorld.FEES + QueueWorld.SHIPPING_SHARE)) : 0,
                    Math.round((t.saved() ? QueueWorld.PACKING : QueueWorld.STRIPPING) * MICRO),
                    -1,
                    -1);
        }
        return b.build();
    }
}
