package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.manifest.words.Field;
import org.salvedge.manifest.words.HeadingWords.Match;

/** Gives each column of a table its field: what the heading says, weighed by whether the cells below fit. */
final class TablePlanner {
    private static final int SAMPLE = 80;
    private static final int VOTERS = 5_000;
    private static final double LEAST = 0.3;
    private static final double SURE_MODEL = 0.85;
    private static final double UNKNOWN_BELOW = 0.45;
    private static final Set<Field> BY_CELLS_ALONE =
            EnumSet.of(Field.CLAIM, Field.INCHES, Field.DESCRIPTION, Field.MODEL, Field.MAKER, Field.ASK);

    private final Readers readers;

    TablePlanner(Readers readers) {
        this.readers = readers;
    }

    private record Candidate(int column, String heading, Field field, double score, String words) {}

    Table plan(Sheet sheet, Header header) {
        List<Cell[]> sample = sample(sheet, header);
        Map<Integer, Header.Heading> headings = new HashMap<>();
        header.headings().forEach(heading -> headings.put(heading.column(), heading));
        Map<Integer, ColumnProfile> profiles = new HashMap<>();
        Map<Integer, Amount> amounts = amounts(sheet, header);
        List<Candidate> candidates = new ArrayList<>();
        for (int c = header.firstColumn(); c < Math.min(sheet.width(), header.endColumn()); c++) {
            Header.Heading heading = headings.getOrDefault(c, new Header.Heading(c, "", List.of()));
            ColumnProfile profile = profile(sample, c, heading.text(), amounts);
            profiles.put(c, profile);
            addCandidates(heading, profile, candidates);
        }
        dropWeakModels(candidates, profiles);
        Map<Integer, Candidate> chosen = choose(candidates);
        Map<Field, Integer> prices = priceColumns(chosen);
        correctTotals(prices, chosen, sample, amounts);
        List<Table.Column> columns = new ArrayList<>();
        for (int c = header.firstColumn(); c < Math.min(sheet.width(), header.endColumn()); c++) {
            Header.Heading heading = headings.get(c);
            Candidate candidate = chosen.get(c);
            if (candidate != null) {
                columns.add(new Table.Column(c, candidate.heading, candidate.field, candidate.score, candidate.words));
            } else if (heading != null) {
                columns.add(new Table.Column(c, heading.text(), Field.NONE, 0, ""));
            }
        }
        SizeReader.Unit unit = columns.stream()
                .filter(column -> column.field() == Field.INCHES)
                .map(column -> SizeReader.unitOf(column.heading()))
                .findFirst()
                .orElse(SizeReader.Unit.INCH);
        Table table = new Table(header, columns, Prices.of(prices, amounts, readers.plainAmount()), unit);
        return finish(table, profiles);
    }

    private static Table finish(Table table, Map<Integer, ColumnProfile> profiles) {
        ColumnProfile model = profiles.get(table.column(Field.MODEL));
        ColumnProfile description = profiles.get(table.column(Field.DESCRIPTION));
        boolean both = model != null && !table.has(Field.MAKER) && model.holdsMakerAndModel();
        boolean claims = description != null && !table.hasClaims() && description.holdsClaims();
        boolean sizes = description != null && description.holdsSizesWithUnit();
        return table.with(both, claims, sizes);
    }

    private static List<Cell[]> sample(Sheet sheet, Header header) {
        List<Cell[]> rows = new ArrayList<>();
        for (int i = header.lastIndex() + 1; i < sheet.size() && rows.size() < SAMPLE; i++) {
            Cell[] row = sheet.row(i);
            int filled = 0;
            for (Cell cell : row) {
                filled += !cell.isBlank() && cell.origin() != Cell.Origin.LEFT ? 1 : 0;
            }
            if (filled > 1 || sheet.width() == 1) {
                rows.add(row);
            }
        }
        return rows;
    }

    private Map<Integer, Amount> amounts(Sheet sheet, Header header) {
        Map<Integer, Amount.Votes> votes = new HashMap<>();
        for (Header.Heading heading : header.headings()) {
            if (heading.matches().stream().anyMatch(match -> match.field().isPrice())
                    || heading.matches().isEmpty()) {
                votes.put(heading.column(), new Amount.Votes());
            }
        }
        int last = Math.min(sheet.size(), header.lastIndex() + 1 + VOTERS);
        for (int i = header.lastIndex() + 1; i < last && !votes.isEmpty(); i++) {
            Cell[] row = sheet.row(i);
            votes.forEach((column, vote) -> vote.add(row[column]));
        }
        Map<Integer, Amount> amounts = new HashMap<>();
        votes.forEach((column, vote) -> amounts.put(column, vote.result(readers.rowWords())));
        return amounts;
    }

    private ColumnProfile profile(List<Cell[]> sample, int column, String heading, Map<Integer, Amount> amounts) {
        ColumnProfile profile = new ColumnProfile();
        SizeReader.Unit unit = SizeReader.unitOf(heading);
        Amount amount = amounts.getOrDefault(column, readers.plainAmount());
        for (Cell[] row : sample) {
            if (row[column].origin() != Cell.Origin.LEFT) {
                profile.add(row[column], readers.sizes(), unit, amount, readers.claims());
            }
        }
        return profile;
    }

    private static void addCandidates(Header.Heading heading, ColumnProfile profile, List<Candidate> into) {
        for (Match match : heading.matches()) {
            double score = match.score() > 1.5 ? match.score() : match.score() * profile.fit(match.field());
            if (score >= LEAST) {
                into.add(new Candidate(heading.column(), heading.text(), match.field(), score, match.words()));
            }
            if (match.field() == Field.DESCRIPTION && profile.holdsBareModels()) {
                into.add(new Candidate(
                        heading.column(), heading.text(), Field.MODEL, match.score() * 0.9, match.words()));
            }
            if (match.field() == Field.DESCRIPTION && profile.holdsClaims() && profile.fit(Field.DESCRIPTION) < 0.5) {
                into.add(new Candidate(
                        heading.column(), heading.text(), Field.CLAIM, match.score() * 0.8, match.words()));
            }
        }
        boolean unknown =
                heading.best() < UNKNOWN_BELOW || heading.matches().get(0).field() != Field.NONE;
        if (unknown) {
            for (Field field : BY_CELLS_ALONE) {
                double score = profile.alone(field);
                if (score > 0) {
                    into.add(new Candidate(heading.column(), heading.text(), field, score, ""));
                }
            }
        }
    }

    /** An article's number is no model number where descriptions hold those. */
    private static void dropWeakModels(List<Candidate> candidates, Map<Integer, ColumnProfile> profiles) {
        boolean described = candidates.stream().anyMatch(c -> {
            ColumnProfile profile = profiles.get(c.column);
            return c.field == Field.DESCRIPTION && c.score >= 0.5 && profile != null && profile.holdsModelsAmongWords();
        });
        if (described) {
            candidates.removeIf(c -> c.field == Field.MODEL && c.score < SURE_MODEL);
        }
    }

    /** The surest first; a field goes to one column (symptoms to many), a column to one field. */
    private static Map<Integer, Candidate> choose(List<Candidate> candidates) {
        candidates.sort(Comparator.comparingDouble((Candidate c) -> -c.score)
                .thenComparingInt(Candidate::column)
                .thenComparing(Candidate::field));
        Map<Integer, Candidate> chosen = new HashMap<>();
        Set<Field> taken = new HashSet<>();
        boolean claims = candidates.stream().anyMatch(c -> c.field == Field.CLAIM && !c.words.isEmpty());
        for (Candidate candidate : candidates) {
            boolean shared = candidate.field.isShared();
            boolean byCells = candidate.words.isEmpty();
            if (chosen.containsKey(candidate.column)
                    || !shared && taken.contains(candidate.field)
                    || byCells && candidate.field == Field.CLAIM && claims
                    || byCells && candidate.field == Field.DESCRIPTION && taken.contains(Field.MODEL)
                    || byCells && candidate.field == Field.MODEL && taken.contains(Field.DESCRIPTION)
                    || byCells && candidate.field == Field.MAKER && taken.contains(Field.DESCRIPTION)) {
                continue;
            }
            chosen.put(candidate.column, candidate);
            taken.add(candidate.field);
        }
        return chosen;
    }

    private static Map<Field, Integer> priceColumns(Map<Integer, Candidate> chosen) {
        Map<Field, Integer> prices = new EnumMap<>(Field.class);
        chosen.values().stream()
                .filter(candidate -> candidate.field.isPrice())
                .sorted(Comparator.comparingInt(Candidate::column))
                .forEach(candidate -> prices.putIfAbsent(candidate.field, candidate.column));
        return prices;
    }

    /** A column headed "total" beside nothing but retail values is their total, where the numbers say so. */
    private void correctTotals(
            Map<Field, Integer> prices,
            Map<Integer, Candidate> chosen,
            List<Cell[]> sample,
            Map<Integer, Amount> amounts) {
        Integer line = prices.get(Field.ASK_LINE);
        Integer retail = prices.getOrDefault(Field.RETAIL_UNIT, prices.get(Field.RETAIL));
        Integer quantity = chosen.values().stream()
                .filter(candidate -> candidate.field == Field.QUANTITY)
                .map(Candidate::column)
                .findFirst()
                .orElse(null);
        boolean askedToo = prices.containsKey(Field.ASK) || prices.containsKey(Field.ASK_UNIT);
        if (line == null || retail == null || askedToo) {
            return;
        }
        int same = 0;
        int compared = 0;
        for (Cell[] row : sample) {
            Integer count = quantity == null
                    ? Integer.valueOf(1)
                    : CountReader.read(row[quantity]).value();
            var whole = amounts.getOrDefault(line, readers.plainAmount())
                    .read(row[line])
                    .value();
            var one = amounts.getOrDefault(retail, readers.plainAmount())
                    .read(row[retail])
                    .value();
            if (count != null && whole != null && one != null) {
                compared++;
                same += whole.compareTo(one.multiply(java.math.BigDecimal.valueOf(count))) == 0 ? 1 : 0;
            }
        }
        if (compared > 0 && same * 5 >= compared * 4) {
            prices.remove(Field.ASK_LINE);
            prices.put(Field.RETAIL_LINE, line);
        }
    }
}
