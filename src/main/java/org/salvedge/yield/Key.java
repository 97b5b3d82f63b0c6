package org.salvedge.yield;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Refused;

/**
 * What the rows of a yield table are made by. With keys of sets only, a row counts sets; with a key of attempts among them, it
 * counts attempts.
 *
 * <p>The order of the constants is that in which cells borrow strength: a cell shrinks to the same cell without its first key in
 * this order, that one again to the one without the next, and so on; family x fault x fix cells thus to fault x fix, these to
 * fault.
 */
public enum Key implements Coded {
    LOT(false),
    MODEL(false),
    /** Of the latest pass for a saved set, of the exit for another decided one; margins stand under the exit's month. */
    MONTH(false),
    TECHNICIAN(true),
    FAMILY(false),
    /** Whole inches, half up. */
    INCHES(false),
    MAKER(false),
    SUPPLIER(false),
    CLAIMED(false),
    /** The exit's, else the latest pass's. */
    GRADE(false),
    FIX(true),
    FAULT(true);

    private static final List<Key> AS_LISTED =
            List.of(FAMILY, MAKER, MODEL, INCHES, SUPPLIER, LOT, CLAIMED, GRADE, MONTH, FAULT, FIX, TECHNICIAN);

    private final boolean ofAttempts;

    Key(boolean ofAttempts) {
        this.ofAttempts = ofAttempts;
    }

    /** Whether it is a property of a turn at the bench, not of the set. */
    public boolean ofAttempts() {
        return ofAttempts;
    }

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }

    /** All keys, those of sets first. */
    public static List<Key> all() {
        return AS_LISTED;
    }

    /**
     * Keys as given to {@code --by}: names with commas between.
     *
     * @throws Refused for a name that is no key, twice the same, or none
     */
    public static List<Key> parse(String list) {
        List<Key> keys = new ArrayList<>();
        for (String name : list.split(",", -1)) {
            Key key = Arrays.stream(values())
                    .filter(k -> k.code().equals(name.strip()))
                    .findFirst()
                    .orElseThrow(() -> new Refused("--by: \"" + name.strip() + "\" is not a key. Give one or more of "
                            + AS_LISTED.stream().map(Key::code).collect(Collectors.joining(", "))
                            + ", with commas between"));
            if (keys.contains(key)) {
                throw new Refused("--by: \"" + key.code() + "\" stands there twice. Leave one out");
            }
            keys.add(key);
        }
        return List.copyOf(keys);
    }
}
