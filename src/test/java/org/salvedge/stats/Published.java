package org.salvedge.stats;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Published data, one table a file; its first line names the source. */
final class Published {
    private final List<String> names;
    private final List<String[]> rows;

    private Published(List<String> names, List<String[]> rows) {
        this.names = names;
        this.rows = rows;
    }

    static Published table(String name) {
        try (InputStream in = Published.class.getResourceAsStream(name + ".csv")) {
            if (in == null) {
                throw new IllegalArgumentException("no table " + name);
            }
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .toList();
            return new Published(
                    Arrays.asList(lines.get(0).split(",", -1)),
                    lines.stream().skip(1).map(line -> line.split(",", -1)).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rows whose column holds this text. */
    Published where(String column, String value) {
        int at = names.indexOf(column);
        return new Published(
                names, rows.stream().filter(row -> row[at].equals(value)).toList());
    }

    double[] numbers(String column) {
        int at = names.indexOf(column);
        return rows.stream().mapToDouble(row -> Double.parseDouble(row[at])).toArray();
    }

    int[] integers(String column) {
        int at = names.indexOf(column);
        return rows.stream().mapToInt(row -> Integer.parseInt(row[at])).toArray();
    }

    boolean[] flags(String column) {
        int[] values = integers(column);
        boolean[] flags = new boolean[values.length];
        IntStream.range(0, values.length).forEach(i -> flags[i] = values[i] == 1);
        return flags;
    }
}
