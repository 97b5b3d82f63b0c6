package org.salvedge.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Entries as they stood at a day's end: what had happened and had been recorded by then; all of them where no day is named. */
record AsOfView(Ledger ledger, @Nullable LocalDate day, ZoneId zone) {
    List<Entry> entriesOf(LotId lot) {
        return seen(ledger.entriesOf(lot), lot);
    }

    /** Every entry about a set; a set happens with the arrival of its lot. */
    List<Entry> entriesOf(UnitId unit) {
        List<Entry> all = ledger.entriesOf(unit);
        return day == null ? all : seen(all, setIn(all).map(TvSet::lot).orElse(new LotId(unit.value())));
    }

    /** The lot as it stood; empty where it was not there yet. */
    Optional<Lot> lot(LotId lot) {
        for (Entry entry : entriesOf(lot)) {
            if (entry.stands() && entry.fact() instanceof Lot standing) {
                return Optional.of(standing);
            }
        }
        return Optional.empty();
    }

    /** The set as it stood among its entries; empty where it was not there yet. */
    static Optional<TvSet> setIn(List<Entry> entries) {
        for (Entry entry : entries) {
            if (entry.stands() && entry.fact() instanceof TvSet standing) {
                return Optional.of(standing);
            }
        }
        return Optional.empty();
    }

    private List<Entry> seen(List<Entry> entries, LotId lot) {
        LocalDate until = day;
        if (until == null) {
            return entries;
        }
        LocalDate arrival =
                ledger.lot(lot).map(Entry::fact).orElse(null) instanceof Lot l ? l.arrivalDay() : LocalDate.MIN;
        List<Entry> seen = new ArrayList<>();
        for (Entry e : entries) {
            if (known(e, arrival, until)) {
                long by = e.supersededBy();
                boolean later = by != 0
                        && ledger.entry(by).map(s -> !known(s, arrival, until)).orElse(true);
                seen.add(later ? new Entry(e.number(), e.fact(), e.recordedAt(), e.supersedes(), 0, e.why()) : e);
            }
        }
        return seen;
    }

    private boolean known(Entry entry, LocalDate arrival, LocalDate until) {
        LocalDate happened = entry.fact() == null ? LocalDate.MIN : happened(entry.fact(), arrival);
        LocalDate recorded = entry.recordedAt() == null ? happened : LocalDate.ofInstant(entry.recordedAt(), zone);
        return !happened.isAfter(until) && !recorded.isAfter(until);
    }

    private static LocalDate happened(Fact fact, LocalDate arrival) {
        if (fact instanceof Attempt a) {
            return a.startedAt().toLocalDate();
        } else if (fact instanceof Exit e) {
            return e.on();
        } else if (fact instanceof Comeback c) {
            return c.on();
        } else if (fact instanceof Offer o) {
            return o.on();
        } else if (fact instanceof Part p) {
            return p.on();
        } else if (fact instanceof Bid b) {
            return b.on();
        } else if (fact instanceof Lot l) {
            return l.boughtOn();
        }
        return fact instanceof TvSet ? arrival : LocalDate.MIN;
    }
}
