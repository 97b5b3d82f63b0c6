package org.salvedge.manifest.words;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A table of words among the resources: {@code key <tab> language <tab> phrase, phrase, ...}; {@code //} begins a comment. */
final class WordTable {
    /** @param phrase folded */
    record Entry(String key, String phrase) {}

    private WordTable() {}

    static List<Entry> load(String name) {
        List<Entry> entries = new ArrayList<>();
        try (InputStream in = WordTable.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("resource " + name + " is missing");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] parts = line.split("\t", -1);
                if (line.isBlank() || line.startsWith("//")) {
                    continue;
                }
                if (parts.length != 3) {
                    throw new IllegalStateException("resource " + name + ": \"" + line + "\" has not three parts");
                }
                for (String phrase : parts[2].split(",", -1)) {
                    entries.add(new Entry(parts[0].strip(), Folded.fold(phrase.strip())));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return entries;
    }
}
