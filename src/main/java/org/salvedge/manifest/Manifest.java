package org.salvedge.manifest;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.shop.Problem;

/**
 * A seller's list as the program understands it.
 *
 * @param file name of the file, without its folder
 * @param sha256 of its bytes, lower-case hexadecimal
 * @param sheet the first sheet that holds a manifest; "" where the file has none
 * @param headerRow row of its header, from 1
 * @param columns field = the header text it was read from; only fields that have a column
 * @param sets one for each physical set, in order of the file
 * @param problems in order of the file
 * @param tables every table that was read, with all its columns, needed or not
 */
public record Manifest(
        String file,
        String sha256,
        String sheet,
        int headerRow,
        Map<String, String> columns,
        List<ListedSet> sets,
        List<Problem> problems,
        List<TableReading> tables) {
    public Manifest {
        tables = List.copyOf(tables);
        columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
        sets = List.copyOf(sets);
        problems = List.copyOf(problems);
    }
}
