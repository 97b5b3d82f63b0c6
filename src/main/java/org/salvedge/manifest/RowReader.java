package org.salvedge.manifest;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Quantity;

/** Reads the rows of one table: which are sets, and what each says. */
final class RowReader {
    private static final int LONG_NOTE = 2;

    private final Sheet sheet;
    private final Header header;
    private final Map<Integer, Prices.Convention> conventions;
    private final Finds finds;

    RowReader(Sheet sheet, Header header, Map<Integer, Prices.Convention> conventions, Finds finds) {
        this.sheet = sheet;
        this.header = header;
        this.conventions = conventions;
        this.finds = finds;
    }

    void read(int row, Cell[] cells) {
        int own = RowKind.own(cells);
        if (own == 0 || RowKind.isRule(cells)) {
            return;
        }
        Naming name = naming(cells);
        if (RowKind.isTotal(cells) && (name.model == null || name.maker == null)) {
            return;
        }
        if (own < LONG_NOTE && (name.model == null || header.kinds() > LONG_NOTE)) {
            return; // a heading or a note
        }
        for (int c = 0; c < cells.length; c++) {
            if (cells[c].kind() == Cell.Kind.DAMAGED) {
                String why = cells[c].damage();
                problem(row, c, cells[c].shown(), why == null ? "is damaged" : why, "Ask the seller for this row");
            }
        }
        String category = text(cells, Field.CATEGORY);
        if (NotATelevision.is(name.all, category) || saysOtherGoods(cells, name)) {
            problem(row, -1, name.all.strip(), "is no television set", "It is left out; nothing is booked for it");
            return;
        }
        if (name.model == null && name.maker == null) {
            if (own >= 3) {
                problem(
                        row,
                        -1,
                        shown(cells),
                        "has neither maker nor model",
                        "Give both, or delete the row if it is no set");
            }
            return;
        }
        if (name.model == null && !hasSetFacts(cells)) {
            return; // "Orlan" alone, or a note in the first column
        }
        book(row, cells, name);
    }

    /** "Soundbar, no remote" under the faults of a row without a size. */
    private boolean saysOtherGoods(Cell[] cells, Naming name) {
        Field size = header.sizeField();
        boolean sized = name.size != null || size != null && !text(cells, size).isEmpty();
        return !sized && NotATelevision.begins(text(cells, Field.CLAIMED));
    }

    /** Something beside the name that makes a row a set: a size, a serial, a claim, a price. */
    private boolean hasSetFacts(Cell[] cells) {
        int facts = 0;
        Field size = header.sizeField();
        Field price = header.priceField();
        for (Field f : new Field[] {size, Field.SERIAL, Field.CLAIMED, price}) {
            facts += f != null && !text(cells, f).isEmpty() ? 1 : 0;
        }
        return facts >= 2;
    }

    private record Naming(
            @Nullable String maker,
            @Nullable String model,
            String all,
            @Nullable Quantity size,
            String rest) {}

    private Naming naming(Cell[] cells) {
        String maker = text(cells, Field.MAKER);
        String model = text(cells, Field.MODEL);
        Cell modelCell = cell(cells, Field.MODEL);
        String together = text(cells, Field.MAKER_MODEL);
        String description = text(cells, Field.DESCRIPTION);
        String all = String.join(" ", maker, model, together, description);
        Quantity size = Sizes.inText(together + " " + description);
        String rest = "";
        if (modelCell != null && modelCell.kind() == Cell.Kind.DATE) {
            return new Naming(none(maker), "", all, size, rest);
        }
        if (modelCell != null && (modelCell.kind() == Cell.Kind.ERROR || modelCell.kind() == Cell.Kind.DAMAGED)) {
            return new Naming(none(maker), "", all, size, rest);
        }
        if (ModelText.isUnknown(model) && !(together + description).isBlank()) {
            ModelText.Parts parts = ModelText.of(together.isBlank() ? description : together);
            model = parts.model() == null ? "" : parts.model();
            maker = maker.isEmpty() && parts.maker() != null ? parts.maker() : maker;
            rest = together.isBlank() ? parts.rest() : description;
        } else if (maker.isEmpty() && model.contains(" ")) {
            ModelText.Parts parts = ModelText.of(model);
            if (parts.maker() != null && parts.model() != null) {
                maker = parts.maker();
                model = parts.model();
            }
        }
        return new Naming(none(maker), ModelText.isUnknown(model) ? null : model, all, size, rest);
    }

    private static @Nullable String none(String text) {
        return ModelText.isUnknown(text) ? null : ModelText.tidy(text);
    }

    private void book(int row, Cell[] cells, Naming name) {
        int quantity = quantity(row, cells);
        if (quantity <= 0) {
            return;
        }
        String model = name.model;
        Cell modelCell = cell(cells, Field.MODEL);
        if (modelCell != null && modelCell.kind() == Cell.Kind.DATE) {
            problem(
                    row,
                    column(Field.MODEL),
                    modelCell.shown(),
                    "is a date, not a model",
                    "The seller's program changed it; look at the rear label");
            model = null;
        } else if (modelCell != null && modelCell.kind() == Cell.Kind.ERROR) {
            problem(row, column(Field.MODEL), modelCell.shown(), "is an error value", "Ask the seller for the model");
            model = null;
        } else if (modelCell != null && modelCell.kind() == Cell.Kind.DAMAGED) {
            model = null; // told above
        } else if (model == null) {
            problem(row, column(Field.MODEL), null, "the model is missing", "Give the model number on the rear label");
        }
        if (name.maker == null
                && (header.has(Field.MAKER) || header.has(Field.MAKER_MODEL) || header.has(Field.DESCRIPTION))) {
            problem(row, column(Field.MAKER), null, "the maker is missing", "Give the maker");
        }
        Quantity inches = size(row, cells, name);
        List<@Nullable String> serials = serials(row, cells, quantity);
        BigDecimal asking = asking(row, cells, quantity);
        String claimText = claimText(cells, name);
        ClaimReader.Reading claim =
                claimText.isEmpty() ? new ClaimReader.Reading(Claim.UNTESTED, 0.2, "") : finds.claims.read(claimText);
        String sheetName = sheet.name() == null ? "" : sheet.name();
        for (int k = 0; k < quantity; k++) {
            finds.set(new ListedSet(
                    sheetName,
                    row,
                    name.maker,
                    model == null ? null : ModelText.tidy(model),
                    inches,
                    serials.get(k),
                    claim.claim(),
                    claimText.isEmpty() ? null : claimText,
                    claim.sureness(),
                    asking));
        }
    }

    private int quantity(int row, Cell[] cells) {
        if (!header.has(Field.QUANTITY)) {
            return 1;
        }
        String text = text(cells, Field.QUANTITY);
        if (text.isEmpty()) {
            return 1;
        }
        int n = Quantities.read(text);
        if (n <= 0 || n > Quantities.LARGEST) {
            problem(
                    row,
                    column(Field.QUANTITY),
                    text,
                    n > Quantities.LARGEST ? "is an absurd quantity" : "is not a quantity",
                    "Give the number of sets, 1 to " + Quantities.LARGEST);
            return 0;
        }
        return n;
    }

    private @Nullable Quantity size(int row, Cell[] cells, Naming name) {
        Field f = header.sizeField();
        if (f == null) {
            return name.size;
        }
        Cell c = cell(cells, f);
        String text = c == null ? "" : c.shown();
        if (c == null || ModelText.isUnknown(text)) {
            if (name.size == null) {
                problem(
                        row,
                        column(f),
                        text.isEmpty() ? null : text,
                        "the screen size is missing",
                        "Give inches or centimetres");
            }
            return name.size;
        }
        Quantity inches = c.kind() == Cell.Kind.TEXT || c.kind() == Cell.Kind.NUMBER ? Sizes.ofCell(text, f) : null;
        if (inches == null) {
            problem(
                    row,
                    column(f),
                    text,
                    "is not a screen size",
                    "Give inches or centimetres (55, 55\", 139 cm), or leave it empty");
        }
        return inches;
    }

    private List<@Nullable String> serials(int row, Cell[] cells, int quantity) {
        List<@Nullable String> out = new ArrayList<>();
        Cell c = cell(cells, Field.SERIAL);
        String text = c == null ? "" : c.shown();
        boolean none = c == null || Serials.isNone(text);
        boolean lost = c != null
                && (c.hasLostDigits()
                        || c.kind() == Cell.Kind.ERROR
                        || c.kind() == Cell.Kind.DAMAGED
                        || c.kind() == Cell.Kind.DATE);
        if (lost) {
            problem(
                    row,
                    column(Field.SERIAL),
                    text,
                    "is no serial any more: digits are lost",
                    "Read the serial from the set");
        }
        List<String> listed = none || lost
                ? List.of()
                : quantity == 1 && !text.matches("(?s).*[,;\\n].*") ? List.of(text.strip()) : Serials.list(text);
        if (!none && !lost && listed.size() != quantity) {
            problem(
                    row,
                    column(Field.SERIAL),
                    text,
                    "holds " + listed.size() + " serials for " + quantity + " sets",
                    "Give one serial for each set");
        }
        for (int k = 0; k < quantity; k++) {
            String serial = k < listed.size() ? listed.get(k) : null;
            if (serial != null && Serials.isDamaged(serial)) {
                problem(
                        row,
                        column(Field.SERIAL),
                        serial,
                        "is no serial any more: it went through scientific notation",
                        "Read the serial from the set");
                serial = null;
            }
            if (serial != null) {
                String where = (sheet.name() == null ? "" : sheet.name() + " ") + "row " + row;
                String before = finds.serialMetBefore(serial, where);
                if (before != null) {
                    problem(
                            row,
                            column(Field.SERIAL),
                            serial,
                            "stands twice in the file, first in " + before,
                            "Check which set has it");
                }
            }
            out.add(serial);
        }
        return out;
    }

    private @Nullable BigDecimal asking(int row, Cell[] cells, int quantity) {
        Field f = header.priceField();
        if (f == null) {
            return null;
        }
        int at = column(f);
        Cell c = at < cells.length ? cells[at] : Cell.BLANK;
        String text = c.shown();
        if (c.isBlank() || c.kind() == Cell.Kind.TEXT && Prices.isNone(text)) {
            return null;
        }
        BigDecimal amount = null;
        if (c.isNumber()) {
            amount = c.number() >= 0 && c.number() <= 1e6 ? BigDecimal.valueOf(c.number()) : null;
        } else if (c.kind() == Cell.Kind.TEXT) {
            amount = Prices.read(text, conventions.getOrDefault(at, Prices.Convention.UNDECIDED));
        }
        if (amount == null) {
            problem(
                    row,
                    at,
                    text,
                    c.kind() == Cell.Kind.ERROR ? "is an error value, not a price" : "is not a price",
                    "Give an amount, or leave it empty");
            return null;
        }
        boolean line = f == Field.ASKING_LINE || f == Field.RETAIL_LINE;
        BigDecimal each = line ? amount.divide(BigDecimal.valueOf(quantity), 4, RoundingMode.HALF_UP) : amount;
        return each.setScale(2, RoundingMode.HALF_UP);
    }

    private String claimText(Cell[] cells, Naming name) {
        StringBuilder text = new StringBuilder();
        for (int c : header.columns(Field.CLAIMED)) {
            String t = c < cells.length ? cells[c].shown().strip() : "";
            if (!t.isEmpty() && !t.matches("[-–—.]+")) {
                text.append(text.length() == 0 ? "" : ", ").append(t);
            }
        }
        String rest = name.rest
                .replaceAll("^[\\s,;:|/()\\-–—\"'”″]+", "")
                .replaceAll("(?i)^(?:led|lcd|oled|qled|smart|4k|uhd|fhd|hd|ultra|tv|\\s|[,;:|/()\\-–—\"'”″])+", "")
                .strip();
        if (!rest.isEmpty() && text.length() == 0) {
            text.append(rest);
        }
        return text.toString();
    }

    private @Nullable Cell cell(Cell[] cells, Field f) {
        for (int c : header.columns(f)) {
            if (c < cells.length && !cells[c].isBlank() && cells[c].origin() != Cell.Origin.LEFT) {
                return cells[c];
            }
        }
        return null;
    }

    private String text(Cell[] cells, Field f) {
        Cell c = cell(cells, f);
        return c == null || c.kind() == Cell.Kind.ERROR || c.kind() == Cell.Kind.DAMAGED
                ? ""
                : c.shown().replaceAll("[ \\t]+", " ").strip();
    }

    private int column(Field f) {
        return header.columns(f).isEmpty() ? -1 : header.columns(f).get(0);
    }

    private static String shown(Cell[] cells) {
        StringBuilder s = new StringBuilder();
        for (Cell c : cells) {
            if (!c.isBlank()) {
                s.append(s.length() == 0 ? "" : " | ").append(c.shown());
            }
        }
        return s.length() > 80 ? s.substring(0, 80) + "…" : s.toString();
    }

    private void problem(int row, int column, @Nullable String found, String problem, String advice) {
        String heading = column < 0 ? null : header.text(column);
        finds.problem(
                sheet,
                row,
                heading == null || heading.isEmpty() ? null : heading,
                found == null || found.isEmpty() ? null : found,
                problem,
                advice);
    }
}
