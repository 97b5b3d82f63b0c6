package org.salvedge.yield.study;

/** What changes in a shop at the beginning of its last month. */
enum Change {
    QUIET("nothing changed"),
    FIX_UP("one fix learnt: its chance had been 0.5 to 0.65 times what it is now"),
    FIX_BAD("one fix gone bad: chance times 0.4 to 0.6"),
    MIX_WORSE("mix worse: 10 to 20 sets in a hundred more with faults seldom mended, whoever the supplier"),
    SUPPLIER_BAD(
            "a supplier gone bad: broken glass up by 0.12 to 0.24, true claims times 0.7, odds of every fix times 0.8"),
    PRICES_FALLEN("prices fallen by 10 to 20 %");

    private final String words;

    Change(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
