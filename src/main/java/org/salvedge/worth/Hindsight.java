package org.salvedge.worth;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Claim;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.stats.Pit;
import org.salvedge.yield.LotLine;
import org.salvedge.yield.Outcomes;

/**
 * What {@code worth} would have said of each past lot on the day before its purchase, and what came of it. Nothing recorded or
 * happened later goes into an estimate: it is made from the record as it stood on that day, and from what the seller listed.
 */
public final class Hindsight {
    /** A lot is finished when nothing of it is here any more and its last sale is this old. */
    public static final int DAYS_AFTER_LAST_SALE = 90;

    private static final double PLACE = 0.5;

    /** The record as it stood at a day's end. */
    @FunctionalInterface
    public interface PastRecord {
        History upTo(LocalDate day);

        /** Parts as they stood. */
        default List<Part> parts(LocalDate day) {
            return List.of();
        }
    }

    /** Is told how far the work has come. */
    @FunctionalInterface
    public interface Watcher {
        void done(int lots, int of);
    }

    private final History now;
    private final Outcomes outcomes;
    private final LocalDate today;
    private final Settings settings;
    private final Map<String, Bid> bids = new HashMap<>();

    /**
     * @param now the record as of today, with every column
     * @param kept bids; those of lots that were bought are looked at
     */
    public Hindsight(History now, LocalDate today, Settings settings, List<Bid> kept) {
        this.now = now;
        this.today = today;
        this.settings = settings;
        outcomes = Outcomes.of(now, settings.labourRate());
        for (Bid bid : kept) {
            if (bid.lot() != null) {
                bids.put(bid.lot().value(), bid);
            }
        }
    }

    /**
     * All lots in order of purchase, the finished ones judged.
     *
     * @param last only so many of the finished lots are judged, the latest
     */
    public List<HeldLot> lots(PastRecord record, int last, int draws, long seed, Watcher watcher) {
        List<LotLine> lines = new ArrayList<>(LotLine.of(outcomes));
        lines.sort(Comparator.comparing(LotLine::bought).thenComparing(LotLine::lot));
        int[] start = new int[now.lots()];
        int[] end = new int[now.lots()];
        spans(start, end);
        int finished = 0;
        for (LotLine line : lines) {
            finished += finished(line, row(line), start, end) ? 1 : 0;
        }
        int skip = Math.max(0, finished - last);
        int of = finished - skip;
        int done = 0;
        List<HeldLot> lots = new ArrayList<>();
        for (LotLine line : lines) {
            int row = row(line);
            boolean through = finished(line, row, start, end);
            if (through && skip > 0) {
                skip--;
                continue;
            }
            lots.add(lot(line, row, start[row], end[row], through ? record : null, draws, seed));
            if (through) {
                watcher.done(++done, of);
            }
        }
        return lots;
    }

    private int row(LotLine line) {
        return now.lotNames().find(line.lot());
    }

    /** Sets stand in the order of lots or not: the first and last rows of each. */
    private void spans(int[] start, int[] end) {
        java.util.Arrays.fill(start, Integer.MAX_VALUE);
        for (int s = 0; s < now.sets(); s++) {
            int lot = now.setLot(s);
            start[lot] = Math.min(start[lot], s);
            end[lot] = s + 1;
        }
    }

    private boolean finished(LotLine line, int row, int[] start, int[] end) {
        if (line.here() > 0
                || line.listed() == 0
                || listed(row, start[row], end[row]).isEmpty()) {
            return false;
        }
        int lastSale = Integer.MIN_VALUE;
        for (int s = start[row]; s < end[row]; s++) {
            if (now.setLot(s) == row) {
                for (int e = now.exitStart(s); e < now.exitStart(s + 1); e++) {
                    if (now.exitKind(e) == ExitKind.SOLD.ordinal() && now.exitGone(e) == 1) {
                        lastSale = Math.max(lastSale, now.exitDay(e));
                    }
                }
            }
        }
        return lastSale == Integer.MIN_VALUE || lastSale <= today.toEpochDay() - DAYS_AFTER_LAST_SALE;
    }

    /** Rows of the sets that the seller listed, in order of their labels. */
    private List<Integer> listed(int lot, int from, int to) {
        List<Integer> rows = new ArrayList<>();
        for (int s = from; s < to; s++) {
            if (now.setLot(s) == lot && now.onManifest(s)) {
                rows.add(s);
            }
        }
        rows.sort(Comparator.comparing(now::label));
        return rows;
    }

    private HeldLot lot(LotLine line, int row, int from, int to, @Nullable PastRecord record, int draws, long seed) {
        List<Integer> listed = from < to ? listed(row, from, to) : List.of();
        double done = line.arrived() == 0 ? 1 : 1 - (double) line.here() / line.arrived();
        return new HeldLot(
                line.lot(),
                line.supplier(),
                line.bought(),
                listed.size(),
                line.listed() - listed.size(),
                done,
                record == null ? null : judged(line, listed, record, draws, seed));
    }

    private HeldLot.Judged judged(LotLine line, List<Integer> listed, PastRecord record, int draws, long seed) {
        LocalDate before = line.bought().minusDays(1);
        History then = record.upTo(before);
        List<Candidate> sets = listed.stream().map(this::candidate).toList();
        Predictive p = ShopModel.fit(then, record.parts(before), before, settings)
                .predict(new Question(sets, line.supplier(), line.bought(), draws, seed))
                .recovery();
        double outcome = line.recovered().toDoubleForStatistics();
        Optional<PlainAverage> plain = PlainAverage.of(Outcomes.of(then, settings.labourRate()));
        Bid bid = bids.get(line.lot());
        return new HeldLot.Judged(
                then.lots(),
                line.recovered(),
                p.mean(),
                p.quantile(0.05),
                p.quantile(0.1),
                p.quantile(0.25),
                p.quantile(0.5),
                p.quantile(0.75),
                p.quantile(0.9),
                p.quantile(0.95),
                Pit.ofDraws(p.sortedDraws(), outcome, PLACE),
                p.crps(outcome),
                plain.map(a -> a.mean(sets.size())).orElse(Double.NaN),
                plain.map(a -> a.crps(sets.size(), outcome)).orElse(Double.NaN),
                bid == null ? null : bid.limit(),
                bid == null ? null : bid.hammer());
    }

    /** A set as its seller listed it. */
    private Candidate candidate(int s) {
        int maker = now.setListedMaker(s) >= 0 ? now.setListedMaker(s) : now.setMaker(s);
        int model = now.setListedModel(s) >= 0 ? now.setListedModel(s) : now.setModel(s);
        long inches = now.setListedInches(s) >= 0 ? now.setListedInches(s) : now.setInches(s);
        int digits = Math.max(0, now.currency().getDefaultFractionDigits());
        return new Candidate(
                null,
                null,
                known(now.makers().text(maker)),
                known(now.models().text(model)),
                inches < 0 ? null : inches / 1e6,
                new Claim(now.claims().text(now.setClaimed(s))),
                now.setAsking(s) < 0 ? null : BigDecimal.valueOf(now.setAsking(s), digits));
    }

    private static @Nullable String known(String text) {
        return text.equals(TvSet.UNKNOWN) ? null : text;
    }
}
