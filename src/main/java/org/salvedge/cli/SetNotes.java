package org.salvedge.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.report.Plural;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;

/** What the bench knows of one set, in few words. */
final class SetNotes {
    private SetNotes() {}

    /** Facts of one kind that stand, in order of time. */
    static <F> List<F> standing(List<Entry> entries, Class<F> kind) {
        return entries.stream()
                .filter(Entry::stands)
                .map(Entry::fact)
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    /** Attempts that stand, in order of time. */
    static List<Attempt> attempts(List<Entry> entries) {
        List<Attempt> attempts = new ArrayList<>(standing(entries, Attempt.class));
        attempts.sort(Comparator.comparing(Attempt::startedAt).thenComparing(Attempt::number));
        return attempts;
    }

    /** Turns so far, the latest finding, where to look from. */
    static String known(TvSet set, List<Entry> entries) {
        List<String> words = new ArrayList<>();
        List<Attempt> attempts = attempts(entries);
        if (!standing(entries, Comeback.class).isEmpty()) {
            words.add("came back");
        }
        if (!attempts.isEmpty()) {
            Attempt last = attempts.get(attempts.size() - 1);
            words.add(Plural.of(attempts.size(), "turn") + ", " + minutes(attempts) + " min");
            words.add(last.fault().code()
                    + (last.fix().equals(Fix.NONE) ? "" : ", " + last.fix().code())
                    + verdict(last.passed()));
        }
        if (set.panel() != null) {
            words.add("panel " + set.panel());
        }
        if (set.inches() != null && set.rows() != null) {
            words.add("look from " + Distance.shortly(set.inches().toDouble(), set.rows()));
        }
        return String.join("; ", words);
    }

    /** How and when the set left, if it is not here; null if it is. */
    static @Nullable String gone(List<Entry> entries) {
        Exit last = null;
        for (Exit e : standing(entries, Exit.class)) {
            last = e.leaves() ? e : last;
        }
        if (last == null) {
            return null;
        }
        for (Comeback c : standing(entries, Comeback.class)) {
            if (c.restocked() && !c.on().isBefore(last.on())) {
                return null;
            }
        }
        return last.kind().code() + " on " + last.on();
    }

    private static String verdict(@Nullable Boolean passed) {
        return passed == null ? "" : passed ? " passed" : " failed";
    }

    static Quantity minutes(List<Attempt> attempts) {
        long sum = 0;
        for (Attempt a : attempts) {
            sum += a.diagnosisMinutes() == null ? 0 : a.diagnosisMinutes().millionths();
            sum += a.fixMinutes() == null ? 0 : a.fixMinutes().millionths();
        }
        return new Quantity(sum);
    }
}
