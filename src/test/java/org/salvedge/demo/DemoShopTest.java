package org.salvedge.demo;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Timeline;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

class DemoShopTest {
    private static final List<Fact> FACTS = DemoShop.history(1);

    private static <F extends Fact> List<F> of(Class<F> kind) {
        return FACTS.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    @Test
    void sameSeedSameYears() {
        assertThat(DemoShop.history(1)).isEqualTo(FACTS);
        assertThat(DemoShop.history(2)).isNotEqualTo(FACTS);
    }

    @Test
    void isAboutSixtyLotsAndFourThousandSets() {
        assertThat(of(Lot.class)).hasSizeBetween(52, 62);
        assertThat(of(TvSet.class)).hasSizeBetween(3_600, 4_400);
    }

    @Test
    void everyHistoryIsPossibleAndTheYieldIsThatOfAWorkingShop() {
        Map<LotId, Lot> lots = new LinkedHashMap<>();
        of(Lot.class).forEach(l -> lots.put(l.lot(), l));
        Map<UnitId, Timeline> lines = new LinkedHashMap<>();
        for (TvSet s : of(TvSet.class)) {
            Timeline t = new Timeline();
            t.start(s.arrived(), (int)
                    requireNonNull(lots.get(s.lot())).arrivalDay().toEpochDay());
            lines.put(s.unit(), t);
        }
        for (Attempt a : of(Attempt.class)) {
            requireNonNull(lines.get(a.unit()))
                    .attempt(
                            (int) a.startedAt().toLocalDate().toEpochDay(),
                            a.startedAt().toLocalTime().toSecondOfDay(),
                            a.number(),
                            !a.fix().equals(Fix.NONE),
                            a.passed() == null ? -1 : a.passed() ? 1 : 0);
        }
        for (Exit e : of(Exit.class)) {
            requireNonNull(lines.get(e.unit())).exit((int) e.on().toEpochDay(), e.seq(), e.kind(), e.leaves());
        }
        for (Comeback c : of(Comeback.class)) {
            requireNonNull(lines.get(c.unit())).comeback((int) c.on().toEpochDay(), c.restocked());
        }
        lines.values().forEach(Timeline::settle);
        assertThat(lines).allSatisfy((unit, t) -> assertThat(t.impossible()).isNull());
        long decided = lines.values().stream().filter(Timeline::decided).count();
        long saved = lines.values().stream().filter(Timeline::saved).count();
        assertThat((double) saved / decided).isBetween(.4, .6);
        assertThat((double) decided / lines.size()).isBetween(.8, .99);
        double takings = of(Exit.class).stream()
                .mapToDouble(e -> e.net().toDoubleForStatistics())
                .sum();
        double outlay = of(Lot.class).stream()
                .mapToDouble(l -> l.landedCost(DemoShop.EUR).toDoubleForStatistics())
                .sum();
        assertThat(takings).isBetween(1.5 * outlay, 3 * outlay);
    }
}
