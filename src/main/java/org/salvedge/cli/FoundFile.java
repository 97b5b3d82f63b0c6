package org.salvedge.cli;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import org.salvedge.worth.Candidate;

/**
 * What was found when sets of a list were looked at: CSV with the headings sheet, line, model and fault, one row a set. Sheet and
 * model may be left out.
 *
 * @param sets the list, with models as they were found
 * @param faults found, by number of the set in the list
 */
record FoundFile(List<Candidate> sets, Map<Integer, String> faults) {
    private static final long MOST_BYTES = 10_000_000;

    static FoundFile read(Path file, List<Candidate> listed, Map<Fault, String> codes) {
        String name = String.valueOf(file.getFileName());
        List<Candidate> sets = new ArrayList<>(listed);
        Map<Integer, String> faults = new LinkedHashMap<>();
        List<Problem> problems = new ArrayList<>();
        requireShort(file, name);
        try (CsvReader<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(Files.readString(file).replace("\uFEFF", ""))) {
            for (NamedCsvRecord row : rows) {
                take(row, name, sets, faults, codes, problems);
            }
        } catch (CharacterCodingException e) {
            throw new Refused(name + ": not UTF-8 text. Save it as CSV in UTF-8");
        } catch (CsvParseException e) {
            throw new Refused(name + ": not CSV with one heading row (" + e.getMessage() + ")");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (!problems.isEmpty()) {
            throw new Refused(name + ": what was found cannot be taken", problems);
        }
        if (faults.isEmpty()) {
            throw new Refused(
                    name + " holds no finding. It wants the headings sheet, line, model, fault and one row a set");
        }
        return new FoundFile(List.copyOf(sets), Collections.unmodifiableMap(faults));
    }

    private static void requireShort(Path file, String name) {
        try {
            if (Files.isRegularFile(file) && Files.size(file) > MOST_BYTES) {
                throw new Refused(name + ": larger than 10 MB, which no list of findings is");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void take(
            NamedCsvRecord row,
            String name,
            List<Candidate> sets,
            Map<Integer, String> faults,
            Map<Fault, String> codes,
            List<Problem> problems) {
        int number = (int) row.getStartingLineNumber();
        String sheet = field(row, "sheet");
        String line = field(row, "line");
        String model = field(row, "model");
        String fault = field(row, "fault");
        int set = line == null ? -1 : next(sets, faults, sheet, line);
        if (set < 0) {
            problems.add(
                    new Problem(
                            name,
                            null,
                            number,
                            "line",
                            line == null ? "" : line,
                            "names no set of the list, or none that is left",
                            "Write the line as the seller's spreadsheet shows it; name the sheet where several have that line"));
            return;
        }
        if (fault == null || codes.keySet().stream().noneMatch(f -> f.code().equals(fault))) {
            problems.add(new Problem(
                    name,
                    null,
                    number,
                    "fault",
                    fault == null ? "" : fault,
                    "is not a known code",
                    "Codes: "
                            + String.join(
                                    ", ",
                                    codes.keySet().stream().map(Fault::code).toList())));
            return;
        }
        faults.put(set, fault);
        if (model != null) {
            Candidate c = sets.get(set);
            sets.set(set, new Candidate(c.sheet(), c.line(), c.maker(), model, c.inches(), c.claimed(), c.asking()));
        }
    }

    /** The first set of that line of which nothing was found yet; -1 = none. */
    private static int next(List<Candidate> sets, Map<Integer, String> faults, @Nullable String sheet, String line) {
        for (int i = 0; i < sets.size(); i++) {
            Candidate c = sets.get(i);
            if (String.valueOf(c.line()).equals(line)
                    && (sheet == null || sheet.equals(c.sheet()))
                    && !faults.containsKey(i)) {
                return i;
            }
        }
        return -1;
    }

    private static @Nullable String field(NamedCsvRecord row, String heading) {
        for (String h : row.getHeader()) {
            if (h.strip().equalsIgnoreCase(heading)) {
                String text = row.findField(h).orElse("").strip();
                return text.isEmpty() ? null : text;
            }
        }
        return null;
    }
}
