package org.salvedge.worth;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an answer rests on.
 *
 * @param lotsOfSupplier lots that this supplier sold to the shop before
 * @param latest last day that anything happened on, null in an empty shop
 * @param lines for each line of the answer
 * @param doubts what could sink the answer, the weightiest first
 * @param assumed what is taken for granted where the record says little, each with its value and the cases on record
 */
public record Grounds(
        int lotsOfSupplier,
        @Nullable LocalDate latest,
        List<LineGrounds> lines,
        List<String> doubts,
        List<String> assumed) {
    public Grounds {
        lines = List.copyOf(lines);
        doubts = List.copyOf(doubts);
        assumed = List.copyOf(assumed);
    }
}
