package org.salvedge.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.salvedge.bench.SellingAdvice.Offered;

/** What to ask for a set, worked by hand: a price of 200 today that falls by 12 a month, spread 0.25. */
class SellingAdviceTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

    private static SellingAdvice advice(List<Offered> like) {
        return SellingAdvice.of(months -> 200 - 12 * months, 0.25, List.of(like));
    }

    /** Eight sold after 10, 20, … 80 days at those parts of an offer of 100. */
    private static List<Offered> sold(double... parts) {
        List<Offered> sold = new ArrayList<>();
        for (int i = 0; i < parts.length; i++) {
            LocalDate day = FIRST.plusDays(10L * (i + 1));
            sold.add(new Offered(FIRST, 100, day, day, 100 * parts[i]));
        }
        return sold;
    }

    @Test
    void theAskingPriceIsTheExpectedOneOverTheMedianShareThatIsPaid() {
        SellingAdvice a = advice(sold(.70, .74, .78, .80, .90, .92, .94, .96));
        assertThat(a.assumed()).isFalse();
        assertThat(a.concession()).isCloseTo(.85, within(1e-12));
        assertThat(a.ask()).isCloseTo(200 / .85, within(1e-9));
        assertThat(a.days()).isEqualTo(40);
        assertThat(a.lowerAfter()).isEqualTo(60);
        double then = (200 - 12 * 60 / (365.25 / 12)) * Math.exp(-.8416 * .25) / .85;
        assertThat(a.lowerTo()).isCloseTo(then, within(1e-9));
    }

    @Test
    void setsStillOnOfferMakeTheDaysLonger() {
        List<Offered> all = sold(.9, .9, .9, .9, .9, .9, .9, .9);
        for (int i = 0; i < 8; i++) {
            all.add(new Offered(FIRST, 100, null, FIRST.plusDays(90), 0));
        }
        assertThat(advice(all).days()).isEqualTo(80);
        assertThat(advice(all).lowerAfter()).isEqualTo(120);
    }

    @Test
    void withFewSalesDaysAndShareAreAssumed() {
        SellingAdvice a = advice(sold(.7, .7, .7, .7, .7, .7, .7));
        assertThat(a.assumed()).isTrue();
        assertThat(a.days()).isNull();
        assertThat(a.concession()).isEqualTo(.95);
    }

    @Test
    void setsThatWereAllGivenAwayTellNoShare() {
        assertThat(advice(sold(0, 0, 0, 0, 0, 0, 0, 0)).concession()).isEqualTo(.95);
    }
}
