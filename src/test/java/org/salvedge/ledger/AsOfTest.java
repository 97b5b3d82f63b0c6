package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.comeback;
import static org.salvedge.shop.Facts.day;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Histories;
import org.salvedge.shop.History;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** As-of reads see what had happened and had been recorded by a day's end, and nothing else. */
class AsOfTest {
    private static final Settings UTC = Settings.defaults(EUR, ZoneOffset.UTC);

    @TempDir
    Path folder;

    @Test
    void anExitBookedLateIsSeenOnlyOnceItWasBooked() {
        TestClock clock = new TestClock("2026-03-01T10:00:00Z");
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), UTC, clock)) {
            ledger.record(
                    List.of(lot("L1", "2026-03-01", "10.00"), set("A", "L1").build()));
            clock.set("2026-03-20T10:00:00Z");
            ledger.record(List.of(exit("A", "2026-03-05", ExitKind.SOLD, "20.00")));

            assertThat(exits(ledger, AsOf.endOf(day("2026-03-05")))).isZero();
            assertThat(exits(ledger, AsOf.happenedBy(day("2026-03-05")))).isOne();
            assertThat(exits(ledger, AsOf.happenedBy(day("2026-03-04")))).isZero();
            assertThat(exits(ledger, AsOf.endOf(day("2026-03-20")))).isOne();
        }
    }

    @Test
    void aDayEndsAtMidnightOfTheShopsZone() {
        TestClock clock = new TestClock("2026-03-01T10:00:00Z");
        Settings tokyo = Settings.defaults(EUR, ZoneId.of("Asia/Tokyo"));
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), tokyo, clock)) {
            ledger.record(
                    List.of(lot("L1", "2026-03-01", "10.00"), set("A", "L1").build()));
            clock.set("2026-03-05T15:00:00Z"); // midnight in Tokyo: the sixth begins
            ledger.record(List.of(exit("A", "2026-03-06", ExitKind.SOLD, "20.00")));
            long late = ledger.latest().orElseThrow().number();
            ledger.amend(late, exit("A", "2026-03-04", ExitKind.SOLD, "20.00"), "it was the fourth");

            assertThat(exits(ledger, AsOf.endOf(day("2026-03-05")))).isZero();
            assertThat(exits(ledger, AsOf.endOf(day("2026-03-06")))).isOne();
        }
    }

    @Test
    void whatCameByImportCountsAsRecordedOnItsDay() {
        TestClock clock = new TestClock("2026-03-01T10:00:00Z");
        try (Ledger source = Ledger.create(folder.resolve("source.db"), UTC, clock)) {
            clock.set("2026-06-01T10:00:00Z");
            source.record(List.of(
                    lot("L1", "2026-03-01", "10.00"),
                    set("A", "L1").build(),
                    exit("A", "2026-03-05", ExitKind.SOLD, "20.00"),
                    comeback("A", "2026-03-09", true)));
            source.exportPackage(folder.resolve("package"), Progress.NONE);
            assertThat(exits(source, AsOf.endOf(day("2026-03-07")))).isZero();
        }
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), UTC, clock)) {
            ledger.importPackage(folder.resolve("package"), Progress.NONE);

            History then = ledger.history(AsOf.endOf(day("2026-03-07")), Detail.COUNTS);
            assertThat(then.exits()).isOne();
            assertThat(then.comebacks()).isZero();
            assertThat(ledger.history(new AsOf(null, day("2026-03-07")), Detail.COUNTS)
                            .comebacks())
                    .isZero();
        }
    }

    @Test
    void aSetIsThereFromTheDayItsLotWasReceived() {
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), UTC, new TestClock("2026-03-01T10:00:00Z"))) {
            var bought = lot("L1", "2026-02-01", "10.00");
            ledger.record(List.of(
                    new Lot(
                            bought.lot(),
                            bought.supplier(),
                            bought.boughtOn(),
                            bought.currency(),
                            null,
                            bought.price(),
                            null,
                            null,
                            null,
                            null,
                            day("2026-02-10"),
                            null,
                            null),
                    set("A", "L1").build()));

            History before = ledger.history(AsOf.happenedBy(day("2026-02-09")), Detail.COUNTS);
            assertThat(before.lots()).isOne();
            assertThat(before.sets()).isZero();
            assertThat(ledger.history(AsOf.happenedBy(day("2026-02-10")), Detail.COUNTS)
                            .sets())
                    .isOne();
        }
    }

    private static int exits(Ledger ledger, AsOf asOf) {
        return ledger.history(asOf, Detail.COUNTS).exits();
    }

    /** An entry as the test itself remembers it. */
    private static final class Known {
        private final Fact fact;
        private final Instant recorded;
        private @Nullable Instant superseded;

        private Known(Fact fact, Instant recorded) {
            this.fact = fact;
            this.recorded = recorded;
        }

        private boolean seen(AsOf asOf) {
            LocalDate by = asOf.recorded();
            Instant end = by == null
                    ? Instant.MAX
                    : by.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
            return recorded.isBefore(end) && (superseded == null || !superseded.isBefore(end));
        }
    }

    /** Records a random history bit by bit, corrects some of it, then compares reads of many days with the test's own list. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyDayReadsAsItStood(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        TestClock clock = new TestClock("2026-01-05T08:00:00Z");
        List<Known> known = new ArrayList<>();
        List<Fact> facts = Histories.random(seed, 6);
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), UTC, clock)) {
            List<Long> numbers = new ArrayList<>();
            for (int from = 0; from < facts.size(); ) {
                int to = Math.min(facts.size(), from + 1 + random.nextInt(12));
                List<Fact> some = facts.subList(from, to);
                numbers.addAll(ledger.record(some));
                some.forEach(f -> known.add(new Known(f, clock.instant())));
                from = to;
                correct(ledger, known, numbers, random, clock);
                // Clocks are set back now and then: a day's reading goes by the instants that were written down.
                clock.forward(Duration.ofHours(random.nextInt(-9, 60)));
            }
            for (int i = 0; i < 60; i++) {
                LocalDate day = LocalDate.of(2026, 1, 4).plusDays(random.nextInt(80));
                AsOf asOf = random.nextInt(4) == 0
                        ? new AsOf(LocalDate.of(2024, 1, 1).plusDays(random.nextInt(700)), day)
                        : new AsOf(null, day);
                assertThat(events(ledger.history(asOf, Detail.FULL))).isEqualTo(events(known, asOf));
            }
            assertThat(events(ledger.history(AsOf.NOW, Detail.FULL))).isEqualTo(events(known, AsOf.NOW));
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    private static void correct(
            Ledger ledger, List<Known> known, List<Long> numbers, SplittableRandom random, TestClock clock) {
        int i = random.nextInt(known.size());
        if (known.get(i).superseded != null || !(known.get(i).fact instanceof Exit exit)) {
            return;
        }
        clock.forward(Duration.ofHours(random.nextInt(30)));
        Exit changed = exit(
                exit.unit().value(),
                exit.on().toString(),
                exit.seq(),
                exit.kind(),
                "" + random.nextInt(900),
                exit.gone());
        long number = ledger.amend(numbers.get(i), changed, "typed wrongly");
        known.get(i).superseded = clock.instant();
        known.add(new Known(changed, clock.instant()));
        numbers.add(number);
        if (random.nextBoolean()) {
            clock.forward(Duration.ofHours(random.nextInt(30)));
            long back = ledger.undo(number, "it was right");
            known.get(known.size() - 1).superseded = clock.instant();
            known.add(new Known(exit, clock.instant()));
            numbers.add(back);
        }
    }

    /** Events of sets that the reading knows: with a clock set back, an exit may have been written down before its set. */
    private static Set<String> events(List<Known> known, AsOf asOf) {
        LocalDate by = asOf.happened() == null ? LocalDate.MAX : asOf.happened();
        Set<LotId> lots = new HashSet<>();
        Set<UnitId> sets = new HashSet<>();
        for (Known k : known) {
            if (k.seen(asOf) && k.fact instanceof Lot lot && !lot.arrivalDay().isAfter(by)) {
                lots.add(lot.lot());
            } else if (k.seen(asOf) && k.fact instanceof TvSet set && lots.contains(set.lot())) {
                sets.add(set.unit());
            }
        }
        Set<String> events = new TreeSet<>();
        for (Known k : known) {
            if (!k.seen(asOf)) {
                continue;
            }
            if (k.fact instanceof Exit e && !e.on().isAfter(by) && sets.contains(e.unit())) {
                events.add("exit " + e.unit() + " " + e.on() + " " + e.seq() + " "
                        + e.gross().minor());
            } else if (k.fact instanceof Attempt a
                    && !a.startedAt().toLocalDate().isAfter(by)
                    && sets.contains(a.unit())) {
                events.add("attempt " + a.unit() + " " + a.number() + " "
                        + a.startedAt().toLocalTime().toSecondOfDay());
            }
        }
        return events;
    }

    private static Set<String> events(History h) {
        Set<String> events = new TreeSet<>();
        for (int e = 0; e < h.exits(); e++) {
            events.add("exit " + h.label(h.exitSet(e)) + " " + LocalDate.ofEpochDay(h.exitDay(e)) + " " + h.exitSeq(e)
                    + " " + h.exitGross(e));
        }
        for (int a = 0; a < h.attempts(); a++) {
            events.add("attempt " + h.label(h.attemptSet(a)) + " " + h.attemptNumber(a) + " " + h.attemptSecond(a));
        }
        return events;
    }
}
