package org.salvedge.manifest;

import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Field;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.RowWords;

/** Tells rows that stand for sets from totals, headings, notes, rules, and goods of other kinds. */
final class RowSorter {
    enum Kind {
        SET,
        OTHER_GOODS,
        /** Neither plainly a set nor plainly something else. */
        UNCLEAR,
        PASSED_OVER
    }

    private static final int SHORTEST_CODE = 3;
    private static final int LONG_NOTE = 60;

    private final Table table;
    private final Readers readers;
    private final RowWords words;

    RowSorter(Table table, Readers readers) {
        this.table = table;
        this.readers = readers;
        this.words = readers.rowWords();
    }

    Kind sort(Cell[] row) {
        int own = 0;
        int filled = 0;
        boolean ruled = true;
        Cell first = Cell.BLANK;
        for (Cell cell : row) {
            if (!cell.isBlank() && cell.origin() != Cell.Origin.LEFT) {
                filled++;
                own += cell.origin() == Cell.Origin.OWN ? 1 : 0;
                first = first.isBlank() ? cell : first;
                ruled &= cell.kind() == Cell.Kind.TEXT && RowWords.isRule(cell.shown());
            }
        }
        if (own == 0 || ruled || isNumbering(row)) {
            return Kind.PASSED_OVER;
        }
        boolean coded = holdsCode(text(row, Field.MODEL)) || holdsCode(text(row, Field.DESCRIPTION));
        if (isTotal(row, coded) || !coded && isHeading(row, first, filled)) {
            return Kind.PASSED_OVER;
        }
        if (isOtherGoods(row, filled)) {
            return Kind.OTHER_GOODS;
        }
        if (filled == 1) {
            return isSetAlone(row) ? Kind.SET : Kind.PASSED_OVER;
        }
        if (isSet(row)) {
            return Kind.SET;
        }
        return isUnclear(row, first) ? Kind.UNCLEAR : Kind.PASSED_OVER;
    }

    /** A row that numbers the columns: (1), (2), (3). */
    private static boolean isNumbering(Cell[] row) {
        int expected = 0;
        for (Cell cell : row) {
            if (!cell.isBlank()) {
                String text = cell.shown();
                String bare = text.startsWith("(") && text.endsWith(")") ? text.substring(1, text.length() - 1) : text;
                expected++;
                if (!bare.equals(Integer.toString(expected))) {
                    return false;
                }
            }
        }
        return expected >= 3;
    }

    private String text(Cell[] row, Field field) {
        int column = table.column(field);
        return column == Table.ABSENT || row[column].origin() == Cell.Origin.LEFT ? "" : row[column].shown();
    }

    private boolean says(Cell[] row, Field field) {
        String text = text(row, field);
        return !text.isEmpty() && !words.isNone(text);
    }

    /** Whether a text holds a word of letters and digits, as model numbers are. */
    static boolean holdsCode(String text) {
        if (text.isEmpty()) {
            return false;
        }
        boolean letter = false;
        boolean digit = false;
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            char c = i < text.length() ? text.charAt(i) : ' ';
            if (Character.isWhitespace(c)) {
                if (letter && digit && i - from >= SHORTEST_CODE) {
                    return true;
                }
                letter = false;
                digit = false;
                from = i + 1;
            } else {
                letter |= Character.isLetter(c);
                digit |= c >= '0' && c <= '9';
            }
        }
        return false;
    }

    private boolean isTotal(Cell[] row, boolean coded) {
        if (coded) {
            return false;
        }
        boolean named =
                says(row, Field.SERIAL) && text(row, Field.SERIAL).chars().anyMatch(Character::isDigit);
        for (int c = 0; c < row.length; c++) {
            if (row[c].kind() == Cell.Kind.TEXT
                    && row[c].origin() != Cell.Origin.LEFT
                    && words.isTotal(row[c].shown())) {
                boolean inWords = isClaimColumn(c);
                boolean bare = !says(row, Field.MODEL) && !says(row, Field.MAKER) && !says(row, Field.INCHES);
                if (!named && (!inWords || bare) && !(isRemark(row[c].shown()) && says(row, Field.MODEL))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isRemark(String text) {
        return text.length() > LONG_NOTE;
    }

    private boolean isClaimColumn(int column) {
        for (int claim : table.claimColumns()) {
            if (claim == column) {
                return true;
            }
        }
        return false;
    }

    private boolean isHeading(Cell[] row, Cell first, int filled) {
        if (first.kind() != Cell.Kind.TEXT) {
            return false;
        }
        boolean named = says(row, Field.SERIAL) || sizeReads(row) || says(row, Field.MAKER) && says(row, Field.MODEL);
        return !named
                && (words.isHeading(first.shown()) && !table.has(Field.DESCRIPTION)
                        || words.isHeading(first.shown()) && filled <= 2
                        || words.isNote(first.shown()) && filled <= 3 && !priced(row));
    }

    private boolean sizeReads(Cell[] row) {
        int column = table.column(Field.INCHES);
        return column != Table.ABSENT
                && readers.sizes().read(row[column], table.unit()).value() != null;
    }

    private boolean isOtherGoods(Cell[] row, int filled) {
        String kind = text(row, Field.KIND);
        Goods.Verdict category =
                kind.isEmpty() ? Goods.Verdict.UNKNOWN : readers.goods().category(kind);
        if (category == Goods.Verdict.OTHER) {
            return true;
        }
        String description = text(row, Field.DESCRIPTION);
        if (!description.isEmpty() && readers.goods().description(description) == Goods.Verdict.OTHER) {
            return filled > 1 || !words.isNote(description);
        }
        String names = (text(row, Field.MAKER) + " " + text(row, Field.MODEL)).strip();
        boolean wordy = names.indexOf(' ') > 0;
        if (wordy && readers.goods().namesOtherGoods(names)
                || wordy && !sizeReads(row) && readers.goods().description(names) == Goods.Verdict.OTHER
                || text(row, Field.MODEL).indexOf(' ') > 0
                        && readers.goods().description(text(row, Field.MODEL)) == Goods.Verdict.OTHER) {
            return true;
        }
        return filled > 2
                && category == Goods.Verdict.UNKNOWN
                && table.has(Field.INCHES)
                && !sizeReads(row)
                && description.isEmpty()
                && claimsNameOtherGoods(row);
    }

    private boolean claimsNameOtherGoods(Cell[] row) {
        for (int column : table.claimColumns()) {
            if (readers.goods().namesOtherGoods(row[column].shown())) {
                return true;
            }
        }
        return false;
    }

    /** One cell alone is a set only where it names one whole: in a list of descriptions, or as a model number. */
    private boolean isSetAlone(Cell[] row) {
        int description = table.column(Field.DESCRIPTION);
        if (description != Table.ABSENT && !row[description].isBlank()) {
            return namesSet(row[description].shown());
        }
        String model = text(row, Field.MODEL);
        return !model.isEmpty() && model.indexOf(' ') < 0 && holdsCode(model) && model.length() > 4;
    }

    private boolean namesSet(String description) {
        Description read = readers.descriptions().read(description);
        boolean television = readers.goods().description(description) == Goods.Verdict.TELEVISION;
        return read.model() != null && (read.inches() != null || read.maker() != null || television)
                || read.inches() != null && television;
    }

    private boolean isSet(Cell[] row) {
        boolean maker = says(row, Field.MAKER);
        boolean size = sizeReads(row);
        boolean sized = says(row, Field.INCHES);
        boolean serial =
                says(row, Field.SERIAL) && text(row, Field.SERIAL).chars().anyMatch(Character::isDigit);
        boolean claim = claims(row);
        boolean price = priced(row);
        String description = text(row, Field.DESCRIPTION);
        if (!description.isEmpty() && namesSet(description)) {
            return true;
        }
        if (says(row, Field.MODEL)) {
            String model = text(row, Field.MODEL);
            boolean coded =
                    holdsCode(model) || model.indexOf(' ') < 0 && model.chars().anyMatch(Character::isDigit);
            int beside = count(maker, sized, serial, claim, price, !description.isEmpty());
            return coded ? beside >= 1 : beside >= 3;
        }
        return maker && (size || serial || claim)
                || serial && (size || claim)
                || size && claim && price
                || size && maker;
    }

    private static int count(boolean... facts) {
        int count = 0;
        for (boolean fact : facts) {
            count += fact ? 1 : 0;
        }
        return count;
    }

    private boolean claims(Cell[] row) {
        for (int column : table.claimColumns()) {
            if (!row[column].isBlank()
                    && row[column].origin() != Cell.Origin.LEFT
                    && row[column].kind() == Cell.Kind.TEXT) {
                return true;
            }
        }
        return false;
    }

    private boolean priced(Cell[] row) {
        int column = table.prices().usedColumn(row);
        return column != Table.ABSENT
                && !row[column].isBlank()
                && !table.prices().read(row, 1).isBad();
    }

    private boolean isUnclear(Cell[] row, Cell first) {
        boolean noteLed =
                first.kind() == Cell.Kind.TEXT && (words.isNote(first.shown()) || words.isHeading(first.shown()));
        boolean named = says(row, Field.DESCRIPTION) || says(row, Field.MODEL) || says(row, Field.MAKER);
        return named && !noteLed && priced(row) && !table.saysLittle();
    }

    /** How many cells hold what their column never does; tells a record whose values have moved. */
    int misfits(Cell[] row) {
        int misfits = 0;
        int inches = table.column(Field.INCHES);
        if (inches != Table.ABSENT && !row[inches].isBlank()) {
            misfits += readers.sizes().read(row[inches], table.unit()).isBad() ? 1 : 0;
        }
        int price = table.prices().shownColumn();
        if (price != Table.ABSENT && !row[price].isBlank()) {
            misfits += table.prices().read(row, 1).isBad() ? 1 : 0;
        }
        int quantity = table.column(Field.QUANTITY);
        if (quantity != Table.ABSENT && !row[quantity].isBlank()) {
            misfits += CountReader.read(row[quantity]).isBad() ? 1 : 0;
        }
        String serial = text(row, Field.SERIAL);
        misfits += !serial.isEmpty() && !words.isNone(serial) && serial.chars().noneMatch(Character::isDigit) ? 1 : 0;
        for (int column : table.claimColumns()) {
            String claim = row[column].shown();
            misfits += !claim.isEmpty() && claim.chars().noneMatch(Character::isLetter) && !words.isNone(claim) ? 1 : 0;
        }
        return misfits;
    }

    /** What to call the row in a message. */
    String label(Cell[] row) {
        String description = text(row, Field.DESCRIPTION);
        if (!description.isEmpty()) {
            return description;
        }
        String names = (text(row, Field.MAKER) + " " + text(row, Field.MODEL)).strip();
        if (!names.isEmpty()) {
            return names;
        }
        for (Cell cell : row) {
            if (!cell.isBlank()) {
                return cell.shown();
            }
        }
        return "";
    }
}
