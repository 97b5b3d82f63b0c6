package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.manifest.words.Field;
import org.salvedge.manifest.words.Folded;
import org.salvedge.manifest.words.HeadingWords;
import org.salvedge.manifest.words.HeadingWords.Match;

/** Tells rows of headings from titles and from rows of goods, by how many of their cells are known headings. */
final class HeaderFinder {
    private static final double KNOWN = 0.45;
    private static final double SURE = 0.8;

    /** So many sure headings in one row are a header, whatever stands between them. */
    private static final int MANY = 4;

    /** By how much two rows must say more than the upper one alone: as when "Item" becomes "Item description". */
    private static final double MORE = 0.35;

    private static final int MOST_KEPT = 20_000;
    private static final int LONGEST = 60;

    private final HeadingWords words;
    private final Map<String, List<Match>> kept = new HashMap<>();

    HeaderFinder(HeadingWords words) {
        this.words = words;
    }

    /** How much a row looks like headings. */
    private record Look(
            List<Header.Heading> headings, int cells, int hits, int digits, double known, int fields, int sure) {
        boolean isHeader() {
            if (sure >= MANY) {
                return true;
            }
            if (digits * 4 > cells || hits * 2 < cells) {
                return false;
            }
            boolean tells = headings.stream().anyMatch(Look::tellsTheSet);
            return fields >= 2 || fields == 1 && tells && hits == cells;
        }

        private static boolean tellsTheSet(Header.Heading heading) {
            return !heading.matches().isEmpty()
                    && heading.matches().get(0).score() >= 0.9
                    && (heading.matches().get(0).field() == Field.DESCRIPTION
                            || heading.matches().get(0).field() == Field.MODEL);
        }
    }

    /** The header that begins in the i-th row, or null. */
    @Nullable
    Header at(Sheet sheet, int i) {
        Cell[] row = sheet.row(i);
        if (!mayBeHeader(row)) {
            return null;
        }
        Look single = look(null, row);
        if (single.hits == 0 || isUnits(row)) {
            return null;
        }
        Header alone = single.isHeader() ? header(sheet, i, single) : null;
        if (i + 1 >= sheet.size() || sheet.number(i + 1) != sheet.number(i) + 1) {
            return alone;
        }
        Cell[] below = sheet.row(i + 1);
        Look lower = mayBeHeader(below) ? look(null, below) : null;
        if (lower == null || lower.cells == 0 || lower.digits * 4 > lower.cells) {
            return alone;
        }
        if (alone != null && isUnits(below)) {
            return header(sheet, i + 1, look(below, row));
        }
        Look both = look(row, below);
        boolean better = both.isHeader()
                && both.known > single.known + MORE
                && both.known > lower.known + 0.01
                && (lower.hits * 2 >= lower.cells || both.hits * 4 >= both.cells * 3);
        boolean lowerBetter = lower.isHeader() && lower.known > single.known && !better;
        if (better || lowerBetter && alone != null) {
            return header(sheet, i + 1, better ? both : lower);
        }
        return alone;
    }

    private static Header header(Sheet sheet, int i, Look look) {
        int last = look.headings.isEmpty()
                ? -1
                : look.headings.get(look.headings.size() - 1).column();
        return new Header(i, sheet.number(i), sheet.fields(i) < 0 ? -1 : last + 1, look.headings);
    }

    private static boolean mayBeHeader(Cell[] row) {
        int texts = 0;
        int others = 0;
        for (Cell cell : row) {
            if (cell.origin() == Cell.Origin.OWN && !cell.isBlank()) {
                if (cell.kind() == Cell.Kind.TEXT) {
                    texts++;
                } else {
                    others++;
                }
            }
        }
        return texts > 0 && others * 4 <= texts;
    }

    /** A row of nothing but units under a header: (inch), (EUR). */
    private static boolean isUnits(Cell[] row) {
        boolean any = false;
        for (Cell cell : row) {
            if (!cell.isBlank() && cell.origin() != Cell.Origin.ABOVE) {
                String folded = Folded.fold(cell.shown());
                boolean unit = folded.startsWith("(") && folded.endsWith(")") && folded.length() < 20
                        || UNITS.contains(folded);
                if (!unit) {
                    return false;
                }
                any = true;
            }
        }
        return any;
    }

    private static final List<String> UNITS = List.of(
            "inch",
            "inches",
            "zoll",
            "pouces",
            "pulgadas",
            "cm",
            "eur",
            "usd",
            "gbp",
            "chf",
            "pcs",
            "stk",
            "\"",
            "in",
            "€",
            "$");

    /** @param upper the row above in a header of two, or null */
    private Look look(Cell @Nullable [] upper, Cell[] row) {
        List<Header.Heading> headings = new ArrayList<>();
        Map<Field, Double> known = new EnumMap<>(Field.class);
        int cells = 0;
        int hits = 0;
        int digits = 0;
        String group = "";
        for (int c = 0; c < row.length; c++) {
            Cell cell = row[c];
            String above = upper == null ? "" : text(upper[c]);
            String own = cell.origin() == Cell.Origin.LEFT && upper != null && above.isEmpty() ? "" : text(cell);
            if (!above.isEmpty()) {
                group = own.isEmpty() || own.equals(above) ? "" : above;
            }
            String shown = own.isEmpty() ? above : own;
            if (shown.isEmpty()) {
                continue;
            }
            String over = above.isEmpty() ? group : above;
            List<Match> matches = own.isEmpty() || over.isEmpty() || over.equals(own) ? match(shown) : match(over, own);
            headings.add(new Header.Heading(c, shown, matches));
            if (cell.origin() == Cell.Origin.LEFT && upper == null) {
                continue; // a merged title counts once
            }
            cells++;
            digits += shown.chars().anyMatch(Character::isDigit) ? 1 : 0;
            if (!matches.isEmpty() && matches.get(0).score() >= KNOWN) {
                hits++;
                Match best = matches.get(0);
                if (best.field() != Field.NONE) {
                    known.merge(best.field(), best.score(), Math::max);
                }
            }
        }
        double sum = known.values().stream().mapToDouble(Double::doubleValue).sum();
        int sure = (int) known.values().stream().filter(score -> score >= SURE).count();
        return new Look(headings, cells, hits, digits, sum, known.size(), sure);
    }

    private static String text(Cell cell) {
        String text = cell.kind() == Cell.Kind.TEXT || cell.isNumber() ? cell.shown() : "";
        return text.indexOf('\n') < 0 && text.indexOf("  ") < 0 ? text : text.replaceAll("\\s+", " ");
    }

    /** The lower text decides where it is sure; else both together may say more. */
    private List<Match> match(String upper, String lower) {
        List<Match> own = match(lower);
        if (!own.isEmpty() && own.get(0).score() >= SURE) {
            if (own.get(0).field() != Field.NONE) {
                return own;
            }
            List<Match> above = match(upper); // "Price" over "incl. box" is the price all the same
            boolean price = !above.isEmpty()
                    && above.get(0).score() >= SURE
                    && above.get(0).field() == Field.ASK;
            return price ? above : own;
        }
        List<Match> both = match(upper + " " + lower);
        boolean better = !both.isEmpty()
                && (own.isEmpty() || both.get(0).score() > own.get(0).score());
        return better ? both : own;
    }

    private List<Match> match(String heading) {
        if (heading.length() > LONGEST) {
            return List.of();
        }
        List<Match> known = kept.get(heading);
        if (known == null) {
            known = words.match(heading);
            if (kept.size() < MOST_KEPT) {
                kept.put(heading, known);
            }
        }
        return known;
    }
}
