package org.salvedge.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.salvedge.bench.LineWalk.Direction;
import org.salvedge.bench.LineWalk.Extent;
import org.salvedge.bench.LineWalk.HalfDriven;
import org.salvedge.bench.LineWalk.Seen;
import org.salvedge.bench.LineWalk.UnderPressure;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;

/** Common practice, no source. */
class LineWalkTest {
    private static LineWalk.Advice seen(Direction d, Extent e, HalfDriven h, UnderPressure p) {
        return LineWalk.of(new Seen(d, e, h, p));
    }

    @Test
    void driveOneHalfBeforeAnythingIsMasked() {
        LineWalk.Advice a = seen(Direction.HORIZONTAL, Extent.BAND, HalfDriven.NOT_TRIED, UnderPressure.NOT_TRIED);
        assertThat(a.fault()).isEqualTo(Fault.ROW_DRIVE);
        assertThat(a.fix()).isNull();
        assertThat(a.tests().get(0)).contains("one half at a time");
    }

    @Test
    void linesThatStayOnOneSideAreMaskedThere() {
        LineWalk.Advice a = seen(Direction.HORIZONTAL, Extent.BAND, HalfDriven.LEFT, UnderPressure.STAYS);
        assertThat(a.fix()).isEqualTo(Fix.CONTACT_MASK);
        assertThat(a.why()).contains("left");
    }

    @Test
    void linesThatChangeUnderPressureAreReseatedFirst() {
        for (HalfDriven h : HalfDriven.values()) {
            assertThat(seen(Direction.HORIZONTAL, Extent.BAND, h, UnderPressure.CHANGES)
                            .fix())
                    .isEqualTo(Fix.RESEAT_CABLE);
        }
    }

    @Test
    void everySightLeadsToAFaultAndSomethingToDo() {
        for (Direction d : Direction.values()) {
            for (Extent e : Extent.values()) {
                for (HalfDriven h : HalfDriven.values()) {
                    for (UnderPressure p : UnderPressure.values()) {
                        LineWalk.Advice a = seen(d, e, h, p);
                        assertThat(Fault.BUILT_IN).containsKey(a.fault());
                        assertThat(a.tests()).isNotEmpty();
                    }
                }
            }
        }
    }
}
