package org.salvedge.manifest;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Published cases for delimited text: RFC 4180, section 2, and the files of csv-spectrum (see the NOTICE beside them). */
final class CsvCases {
    /** @param records fields of each record, the header's first */
    record Case(String name, String text, List<List<String>> records) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final Path FOLDER = Path.of("src/test/resources/csv");

    private CsvCases() {}

    static Stream<Case> all() {
        return Stream.concat(rfc4180(), spectrum());
    }

    private static Stream<Case> rfc4180() {
        List<Case> cases = new ArrayList<>();
        for (JsonNode n : json(FOLDER.resolve("rfc4180.json"))) {
            List<List<String>> records = new ArrayList<>();
            n.get("records").forEach(r -> records.add(texts(r)));
            cases.add(new Case(n.get("rule").asText(), n.get("text").asText(), records));
        }
        return cases.stream();
    }

    private static Stream<Case> spectrum() {
        try (Stream<Path> files = Files.list(FOLDER.resolve("spectrum"))) {
            return files.filter(f -> f.toString().endsWith(".csv")).sorted().map(CsvCases::spectrum).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Case spectrum(Path file) {
        String name = file.getFileName().toString().replace(".csv", "");
        Set<String> header = new LinkedHashSet<>();
        List<List<String>> records = new ArrayList<>();
        for (JsonNode n : json(FOLDER.resolve("spectrum/" + name + ".json"))) {
            n.fieldNames().forEachRemaining(header::add);
            records.add(texts(n));
        }
        records.add(0, List.copyOf(header));
        return new Case(name, ReferenceGrid.decode(file), records);
    }

    private static List<String> texts(JsonNode values) {
        List<String> out = new ArrayList<>();
        values.forEach(v -> out.add(v.asText()));
        return out;
    }

    private static JsonNode json(Path file) {
        try {
            return new ObjectMapper().readTree(file.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
