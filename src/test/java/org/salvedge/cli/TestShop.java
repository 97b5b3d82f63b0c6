package org.salvedge.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Currency;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Screen;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** A shop in a folder, worked through the same entry point as the real program; its clock stands at noon of 2026-03-14. */
final class TestShop {
    static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    static final Currency EUR = Currency.getInstance("EUR");

    /** An answer that is none: time passes before the next, as in {@code later PT12M}. */
    static final String LATER = "later ";

    private final Path folder;
    private final Map<String, String> environment = new HashMap<>();
    private final Deque<String> answers = new ArrayDeque<>();
    private final List<String> questions = new ArrayList<>();
    private boolean terminal;
    private Screen screen = Screen.plain();
    private Clock clock = Clock.fixed(Instant.parse("2026-03-14T11:00:00Z"), BERLIN);
    private String out = "";
    private String err = "";

    TestShop(Path folder) {
        this.folder = folder;
    }

    /** With a ledger: lot L0042 of three sets of one family, bought on 2026-03-02 for 90.00 EUR. */
    static TestShop withLot(Path folder) {
        TestShop shop = new TestShop(folder);
        shop.run("init", "--zone", "Europe/Berlin");
        shop.book(lot("L0042", "90.00"), set("L0042", 1), set("L0042", 2), set("L0042", 3));
        return shop;
    }

    static Lot lot(String name, String price) {
        return new Lot(
                new LotId(name),
                "Northquay",
                LocalDate.of(2026, 3, 2),
                EUR,
                null,
                Money.parse(price, EUR),
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    static TvSet set(String lot, int number) {
        return TvSet.builder(new UnitId(lot + "-00" + number), new LotId(lot))
                .sheet("Sheet1")
                .line(number + 4)
                .maker("Kestrel")
                .model("KX-55A")
                .family("Kestrel KX-55")
                .inches(Quantity.of(55))
                .claimed(Claim.HORIZONTAL_LINES)
                .build();
    }

    void book(Fact... facts) {
        try (Ledger ledger = Ledger.open(folder.resolve("shop.db"), Settings.defaults(EUR, BERLIN), clock)) {
            ledger.record(List.of(facts));
        }
    }

    /** Someone is at the keyboard and gives these answers, then ends the input. */
    TestShop answering(String... lines) {
        terminal = true;
        answers.addAll(List.of(lines));
        return this;
    }

    TestShop with(String variable, String value) {
        environment.put(variable, value);
        return this;
    }

    /** On a terminal of that width. */
    TestShop columns(int width) {
        screen = new Screen(width, true, false);
        return this;
    }

    TestShop inColour() {
        screen = new Screen(Screen.WIDEST, true, true);
        return this;
    }

    TestShop at(String instant) {
        clock = Clock.fixed(Instant.parse(instant), BERLIN);
        return this;
    }

    /** A defect on purpose: whoever asks for the time gets none. */
    void withoutClock() {
        clock = new Clock() {
            @Override
            public ZoneId getZone() {
                return BERLIN;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }

            @Override
            public Instant instant() {
                throw new IllegalStateException("no clock");
            }
        };
    }

    int run(String... args) {
        StringWriter said = new StringWriter();
        StringWriter complained = new StringWriter();
        int status = new Program(surroundings(said, complained)).run(args);
        out = said.toString();
        err = complained.toString();
        return status;
    }

    private Surroundings surroundings(StringWriter said, StringWriter complained) {
        return new Surroundings(
                new Moving(), new PrintWriter(said), new PrintWriter(complained), folder, environment, new Keyboard());
    }

    /** As a command has it. */
    Session session() {
        return new Session(surroundings(new StringWriter(), new StringWriter()), folder);
    }

    /** Standard output of the latest run. */
    String out() {
        return out;
    }

    /** Standard error of the latest run. */
    String err() {
        return err;
    }

    List<String> questions() {
        return questions;
    }

    Path folder() {
        return folder;
    }

    /** Whatever the clock shows by then. */
    private final class Moving extends Clock {
        @Override
        public ZoneId getZone() {
            return BERLIN;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return clock.instant();
        }
    }

    private final class Keyboard implements Terminal {
        @Override
        public boolean asks() {
            return terminal;
        }

        @Override
        public boolean watches() {
            return false;
        }

        @Override
        public @Nullable String answer(String question) {
            questions.add(question);
            String next = answers.poll();
            while (next != null && next.startsWith(LATER)) {
                clock = Clock.offset(clock, Duration.parse(next.substring(LATER.length())));
                next = answers.poll();
            }
            return next;
        }

        @Override
        public @Nullable String line(String question) {
            return answer(question);
        }

        @Override
        public Screen screen() {
            return screen;
        }
    }
}
