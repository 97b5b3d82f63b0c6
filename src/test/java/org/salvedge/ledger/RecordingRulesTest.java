package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.comeback;
import static org.salvedge.shop.Facts.day;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.Side;

/** What cannot have happened, or cannot be kept, is refused with the reason, and nothing is kept of it. */
class RecordingRulesTest {
    private static final Currency YEN = Currency.getInstance("JPY");

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void aLotReceivedOnTheFifth() {
        ledger = Ledger.create(
                folder.resolve("shop.db"),
                Settings.defaults(EUR, ZoneOffset.UTC),
                new TestClock("2026-04-01T12:00:00Z"));
        ledger.record(List.of(
                received("L1", "2026-03-05"),
                set("A", "L1").build(),
                set("B", "L1").build(),
                set("N", "L1").arrived(false).build()));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static Lot received(String name, String day) {
        Lot l = lot(name, "2026-03-01", "100.00");
        return new Lot(
                l.lot(),
                l.supplier(),
                l.boughtOn(),
                EUR,
                null,
                l.price(),
                null,
                null,
                null,
                null,
                day(day),
                null,
                null);
    }

    private void refuses(String why, Fact... facts) {
        long before = ledger.latest().orElseThrow().number();
        assertThatThrownBy(() -> ledger.record(List.of(facts)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(why);
        assertThat(ledger.latest().orElseThrow().number()).isEqualTo(before);
    }

    private static Fact fixed(int number, String unit, String day) {
        return attempt(number, unit, day + "T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true);
    }

    @Test
    void anAttemptBeforeTheSetWasReceived() {
        refuses("attempt 1 on A is before the day the set was received, 2026-03-05", fixed(1, "A", "2026-03-04"));
    }

    @Test
    void anAttemptOnASetThatLeft() {
        refuses(
                "attempt 1 on A is after the set has gone",
                exit("A", "2026-03-06", ExitKind.STRIPPED, "10.00"),
                fixed(1, "A", "2026-03-07"));
    }

    @Test
    void anExitBeforeTheSetWasReceived() {
        refuses("is before the day the set was received", exit("A", "2026-03-04", ExitKind.SOLD, "10.00"));
    }

    @Test
    void aSetSoldTwice() {
        ledger.record(List.of(exit("A", "2026-03-06", ExitKind.SOLD, "10.00")));

        refuses(
                "a set can leave again only after a comeback that put it back in stock",
                exit("A", "2026-03-07", ExitKind.SOLD, "10.00"));
        refuses("is after the set has gone", exit("A", "2026-03-06", 2, ExitKind.SOLD, "10.00", null));
    }

    @Test
    void anEarlierExitThatMakesALaterOneImpossibleNamesThatOne() {
        ledger.record(List.of(exit("A", "2026-03-09", ExitKind.SOLD, "10.00")));

        refuses(
                "exit of A on 2026-03-09 (entry 5) is after the set has gone",
                exit("A", "2026-03-07", ExitKind.LOST, "0"));
    }

    @Test
    void aComebackOfASetThatWasNotSold() {
        refuses(
                "comeback of A on 2026-03-09 is of a set that was not sold at that time",
                comeback("A", "2026-03-09", true));
        ledger.record(List.of(exit("A", "2026-03-06", ExitKind.STRIPPED, "10.00")));
        refuses("is of a set that was not sold", comeback("A", "2026-03-09", true));
    }

    @Test
    void aSetThatNeverArrivedTakesOnlyASellersCredit() {
        refuses("is about a set that never arrived", fixed(1, "N", "2026-03-06"));
        refuses("is about a set that never arrived", exit("N", "2026-03-06", ExitKind.SOLD, "10.00"));
        ledger.record(List.of(exit("N", "2026-03-06", ExitKind.RETURNED, "10.00")));
    }

    @Test
    void takingsForAPartLeaveTheSetWhereItStands() {
        ledger.record(List.of(
                exit("A", "2026-03-06", 1, ExitKind.STRIPPED, "10.00", false),
                fixed(1, "A", "2026-03-07"),
                exit("A", "2026-03-08", ExitKind.SOLD, "90.00")));
    }

    @Test
    void aPassWithNeitherFixNorFinding() {
        assertThatThrownBy(() -> attempt(1, "A", "2026-03-06T09:00:00", Fault.UNKNOWN, Fix.NONE, true))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("a pass needs a fix or a finding");
    }

    @Test
    void thingsThatAreNotOnRecord() {
        refuses("there is no set X", fixed(1, "X", "2026-03-06"));
        refuses("there is no set X", exit("X", "2026-03-06", ExitKind.SOLD, "1.00"));
        refuses("there is no set X", comeback("X", "2026-03-06", true));
        refuses("there is no set X", new Offer(unit("X"), day("2026-03-06"), eur("1.00"), null));
        refuses("there is no lot L9", set("C", "L9").build());
        refuses("there is no lot L9", bid(1, new LotId("L9")));
        refuses("there is no set X", part("P1", "X", null));
        refuses("there is no attempt 8", part("P1", null, 8));
    }

    private static Bid bid(int number, @Nullable LotId lot) {
        return new Bid(number, day("2026-03-01"), null, null, null, null, null, null, null, null, null, null, lot);
    }

    private static Part part(String label, @Nullable String from, @Nullable Integer attempt) {
        return new Part(
                label,
                from == null ? null : unit(from),
                PartKind.FILM,
                null,
                day("2026-03-06"),
                eur("1.00"),
                null,
                attempt,
                null);
    }

    @Test
    void whatIsThereAlready() {
        Recipe recipe = new Recipe("P1", Side.LEFT, "3 4", null, null, null, null, null, null);
        Offer offer = new Offer(unit("A"), day("2026-03-06"), eur("1.00"), null);
        Fact sold = exit("B", "2026-03-06", ExitKind.SOLD, "10.00");
        Fact back = comeback("B", "2026-03-08", true);
        List<Fact> facts =
                List.of(fixed(1, "A", "2026-03-06"), sold, back, recipe, offer, bid(4, null), part("P1", null, null));
        ledger.record(facts);

        refuses("lot L1 is on record already (entry 1)", received("L1", "2026-03-06"));
        refuses("set A is on record already (entry 2)", set("A", "L1").build());
        refuses("attempt 1 on A is on record already", fixed(1, "B", "2026-03-06"));
        for (Fact fact : facts) {
            refuses("is on record already (entry", fact);
        }
    }

    @Test
    void daysAfterToday() {
        refuses("2026-04-02 is in the future", exit("A", "2026-04-02", ExitKind.SOLD, "10.00"));
        refuses("2026-04-02 is in the future", fixed(1, "A", "2026-04-02"));
        refuses("2026-04-02 is in the future", received("L2", "2026-04-02"));
        ledger.record(List.of(
                set("C", "L1").expectedOn(day("2027-01-01")).build(), exit("A", "2026-04-01", ExitKind.SOLD, "10.00")));
    }

    @Test
    void amountsInAnotherCurrency() {
        Exit inYen = new Exit(
                unit("A"),
                day("2026-03-06"),
                1,
                ExitKind.SOLD,
                null,
                new Money(100, YEN),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        refuses("100 is in JPY where amounts are in EUR", inYen);
        refuses(
                "the asking price of set C is in JPY, its lot's amounts are in EUR",
                set("C", "L1").asking(new Money(100, YEN)).build());
        refuses("there is no rate", inYen(null));
        ledger.record(List.of(
                inYen(new BigDecimal("0.0061")),
                set("Y", "LY").asking(new Money(9000, YEN)).build()));
        assertThat(ledger.unit(unit("Y")).orElseThrow().fact())
                .isEqualTo(set("Y", "LY")
                        .asking(new Money(9000, YEN))
                        .landedCost(eur("61.00"))
                        .build());
    }

    private static Lot inYen(@Nullable BigDecimal rate) {
        return new Lot(
                new LotId("LY"),
                "Kavo",
                day("2026-03-01"),
                YEN,
                rate,
                new Money(10_000, YEN),
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    @Test
    void codesThatTheShopDoesNotHave() {
        refuses(
                "\"dropped\" is not a known code",
                attempt(1, "A", "2026-03-06T09:00:00", new Fault("dropped"), Fix.NONE, null));
    }

    @Test
    void controlCharactersInText() {
        refuses("holds a control character", set("C", "L1").serial("a\u001b[2J").build());
    }

    @Test
    void oneBadFactKeepsTheGoodOnesOut() {
        refuses(
                "is after the set has gone",
                fixed(1, "A", "2026-03-06"),
                exit("A", "2026-03-07", ExitKind.SOLD, "1.00"),
                fixed(2, "A", "2026-03-08"));
        ledger.record(List.of(fixed(1, "A", "2026-03-06"))); // the number is still free
    }

    @Test
    void numbersAreGivenWithinTheTransaction() {
        List<Long> entries = ledger.record(() -> List.of(fixed(ledger.nextAttempt(), "A", "2026-03-06")));

        assertThat(entries).containsExactly(5L);
        assertThat(ledger.nextAttempt()).isEqualTo(2);
        assertThat(ledger.nextBid()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(ints = {0x200e, 0x200f, 0x202a, 0x202e, 0x2066, 0x2069, 0x061c, 0xfeff, 0xe0041})
    void aNewLabelShowsAllThatItIs(int mark) {
        String label = "L" + Character.toString(mark) + "7";
        refuses("holds a character that is not seen", lot(label, "2026-03-01", "10.00"));
        refuses("holds a character that is not seen", set(label, "L1").build());
        refuses("holds a character that is not seen", part(label, null, null));
    }
}
