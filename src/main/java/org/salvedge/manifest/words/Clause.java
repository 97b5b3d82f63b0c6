package org.salvedge.manifest.words;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** One clause of a remark: the ideas in their order, and which of them are denied. */
final class Clause {
    private static final int REACH = 5;

    /** Ideas that a "no" may deny. */
    private static final Set<Idea> DENIABLE = EnumSet.of(
            Idea.GLASS,
            Idea.SOUND,
            Idea.SPEAKER,
            Idea.PICTURE,
            Idea.POWER,
            Idea.BOARD,
            Idea.LINES,
            Idea.LIGHT,
            Idea.CRACK,
            Idea.BROKEN,
            Idea.HARM,
            Idea.TURNON,
            Idea.WORK,
            Idea.DEAD,
            Idea.RESTART,
            Idea.STUCK,
            Idea.DARK,
            Idea.DIM,
            Idea.BLACK,
            Idea.BLACKSCREEN,
            Idea.TEST,
            Idea.RETURN,
            Idea.WORKING,
            Idea.FAULT,
            Idea.OTHER,
            Idea.EXTRA,
            Idea.FINE,
            Idea.OK,
            Idea.UNBROKEN);

    private static final Set<Idea> DOINGS =
            EnumSet.of(Idea.TURNON, Idea.WORK, Idea.WORKING, Idea.TEST, Idea.FINE, Idea.OK);

    /** Things that a doing may belong to: "sound does not work". */
    private static final Set<Idea> THINGS = EnumSet.of(
            Idea.SOUND,
            Idea.SPEAKER,
            Idea.PICTURE,
            Idea.LIGHT,
            Idea.OTHER,
            Idea.EXTRA,
            Idea.GLASS,
            Idea.HALF,
            Idea.POWER);

    private static final Set<Idea> HURTS = EnumSet.of(Idea.CRACK, Idea.BROKEN, Idea.HARM, Idea.FAULT, Idea.LINES);

    /** @param words as found, folded */
    record Item(String words, Set<Idea> ideas) {
        boolean isAny(Set<Idea> wanted) {
            for (Idea idea : ideas) {
                if (wanted.contains(idea)) {
                    return true;
                }
            }
            return false;
        }

        boolean is(Idea idea) {
            return ideas.contains(idea);
        }
    }

    private final List<Item> items;
    private final boolean[] denied;
    private final boolean[] spent;
    private boolean beginsDenied;

    Clause(List<Item> items) {
        this.items = items;
        this.denied = new boolean[items.size()];
        this.spent = new boolean[items.size()];
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).is(Idea.NOT)) {
                deny(i);
            }
        }
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).is(Idea.GONE)) {
                lose(i);
            }
        }
    }

    private void deny(int not) {
        beginsDenied |= not == 0;
        int target = nextDeniable(not + 1);
        if (target < 0) {
            // "sound: no", "startet nicht": nothing follows, so what stands before is meant.
            int before = previous(not, DENIABLE);
            if (before >= 0) {
                denyWithThing(before);
            }
            return;
        }
        if (items.get(target).isAny(DOINGS)) {
            int thing = previous(not, THINGS);
            boolean near = thing >= 0 && not - thing <= 3 && !spent[thing];
            denied[target] = true;
            int after = target + 1;
            if (!near
                    && items.get(target).is(Idea.WORK)
                    && after < items.size()
                    && items.get(after).isAny(THINGS)) {
                denied[after] = true; // "does not show a picture"
                spent[target] = true;
            }
            if (near && !items.get(target).is(Idea.TEST)) {
                denied[thing] = true;
                spent[target] = true;
            }
        } else {
            denied[target] = true;
            int next = target + 1;
            // "no screen damage": the harm is meant, not the screen.
            if (items.get(target).is(Idea.GLASS)
                    && next < items.size()
                    && items.get(next).isAny(HURTS)) {
                denied[target] = false;
                denied[next] = true;
                target = next;
            }
            denyAlternatives(target);
        }
    }

    private void denyWithThing(int before) {
        denied[before] = true;
        if (items.get(before).isAny(DOINGS)) {
            int thing = previous(before, THINGS);
            if (thing >= 0 && before - thing <= 2) {
                denied[thing] = true;
                spent[before] = true;
            }
        }
    }

    private void denyAlternatives(int target) {
        for (int i = target + 1; i + 1 < items.size() && items.get(i).is(Idea.OR); ) {
            int next = nextDeniable(i + 1);
            if (next < 0) {
                return;
            }
            denied[next] = true;
            i = next + 1;
        }
    }

    private void lose(int gone) {
        int thing = previous(gone, THINGS);
        boolean near = thing >= 0 && gone - thing <= 2
                || thing >= 0 && items.get(thing).is(Idea.EXTRA);
        if (near) {
            denied[thing] = true;
            return;
        }
        for (int i = gone + 1; i < items.size() && i <= gone + 3; i++) {
            if (items.get(i).isAny(THINGS)) {
                denied[i] = true;
                return;
            }
        }
    }

    private int nextDeniable(int from) {
        int reach = 0;
        for (int i = from; i < items.size() && reach < REACH; i++) {
            Item item = items.get(i);
            if (item.isAny(DENIABLE)) {
                return i;
            }
            if (item.is(Idea.AND)) {
                return -1;
            }
            reach++;
        }
        return -1;
    }

    private int previous(int from, Set<Idea> wanted) {
        for (int i = from - 1; i >= 0; i--) {
            if (items.get(i).isAny(wanted)) {
                return i;
            }
        }
        return -1;
    }

    /** A list of what is not: "no cracks, chips or dents" denies harm in its later clauses too. */
    void denyHarmAfter(Clause before) {
        if (before.beginsDenied && items.stream().anyMatch(item -> item.is(Idea.OR)) && !beginsDenied) {
            beginsDenied = true;
            for (int i = 0; i < items.size(); i++) {
                denied[i] |= items.get(i).isAny(HURTS) && !items.get(i).is(Idea.LINES);
            }
        }
    }

    List<Item> items() {
        return items;
    }

    /** Whether an idea is there and not denied. */
    boolean has(Idea idea) {
        for (int i = 0; i < items.size(); i++) {
            if (!denied[i] && !spent[i] && items.get(i).is(idea)) {
                return true;
            }
        }
        return false;
    }

    boolean hasAny(Idea... ideas) {
        for (Idea idea : ideas) {
            if (has(idea)) {
                return true;
            }
        }
        return false;
    }

    /** Whether an idea is there and denied. */
    boolean lacks(Idea idea) {
        for (int i = 0; i < items.size(); i++) {
            if (denied[i] && !spent[i] && items.get(i).is(idea)) {
                return true;
            }
        }
        return false;
    }

    /** Whether an idea is there, denied or not. */
    boolean names(Idea idea) {
        return items.stream().anyMatch(item -> item.is(idea));
    }

    /** How many words are not known at all. */
    int unknown() {
        return (int) items.stream().filter(item -> item.ideas().isEmpty()).count();
    }
}
