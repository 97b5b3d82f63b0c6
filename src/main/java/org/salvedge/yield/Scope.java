package org.salvedge.yield;

import java.time.YearMonth;

/** Which sets and which margins a table counts. */
interface Scope {
    Scope EVERYTHING = new Scope() {
        @Override
        public boolean holds(int set) {
            return true;
        }

        @Override
        public boolean holdsMargin(int set) {
            return true;
        }
    };

    boolean holds(int set);

    /** Of a gone set. */
    boolean holdsMargin(int set);

    static Scope of(Outcomes outcomes, YearMonth month) {
        Days days = Days.of(month);
        return new Scope() {
            @Override
            public boolean holds(int set) {
                return outcomes.decided(set) && days.hold(outcomes.decidedDay(set));
            }

            @Override
            public boolean holdsMargin(int set) {
                return days.hold(outcomes.history().exitDay(outcomes.exit(set)));
            }
        };
    }
}
