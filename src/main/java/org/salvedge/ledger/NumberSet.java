package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.IntOpenHashSet;
import java.util.BitSet;

/** A set of numbers that mostly run from 1 up without a gap. */
final class NumberSet {
    private static final int DENSE = 1 << 26;

    private final BitSet dense = new BitSet();
    private final IntOpenHashSet others = new IntOpenHashSet();

    /** Whether it was not there before. */
    boolean add(int number) {
        if (number < 0 || number >= DENSE) {
            return others.add(number);
        }
        boolean isNew = !dense.get(number);
        dense.set(number);
        return isNew;
    }

    boolean contains(int number) {
        return number >= 0 && number < DENSE ? dense.get(number) : others.contains(number);
    }
}
