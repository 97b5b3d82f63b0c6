package org.salvedge.worth.turn;

import java.util.Map;

/**
 * What the next turn with a set is expected to bring. Money in units of the book currency.
 *
 * @param likely the likeliest fault, or the one found
 * @param chance of that fault; 1 where it was found
 * @param saved chance that the turn saves the set
 * @param gain over stripping the set at once, less parts and labour
 * @param minutes expected, diagnosis included
 * @param rate the cost of a minute beyond labour at which the turn would bring nothing: the set's place in the queue
 * @param stopAt minutes from taking it in hand after which to give up while the fault is not known
 * @param stops the same by fault found, likeliest first; 0 = strip
 */
public record Prospect(
        String likely,
        double chance,
        double saved,
        double gain,
        double minutes,
        double rate,
        int stopAt,
        Map<String, Integer> stops) {}
