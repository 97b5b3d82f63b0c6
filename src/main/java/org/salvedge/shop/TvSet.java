package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One television set. Null means not known; {@code maker} and {@code model} are {@value #UNKNOWN} where they could not be read.
 *
 * @param sheet sheet of the seller's manifest it came from
 * @param line line of that sheet, from 1; null for a set that was not on the manifest
 * @param family model family: sets that share chassis and panel behaviour
 * @param inches screen diagonal, inches
 * @param listedMaker what the manifest said where the set turned out to be another; null = the same
 * @param rows vertical resolution, pixels
 * @param panel model number on the panel's own label
 * @param asking the seller's stated or retail value, in the lot's currency
 * @param incomplete stand, remote or another part is missing; null = not said
 * @param arrived false: on the manifest, not on the pallet
 * @param landedCost share of the lot's landed cost, book currency; null until it is shared out
 */
public record TvSet(
        UnitId unit,
        LotId lot,
        @Nullable String sheet,
        @Nullable Integer line,
        String maker,
        String model,
        String family,
        @Nullable String serial,
        @Nullable Quantity inches,
        @Nullable String listedMaker,
        @Nullable String listedModel,
        @Nullable Quantity listedInches,
        @Nullable Integer rows,
        @Nullable String panel,
        Claim claimed,
        @Nullable String claimedText,
        @Nullable Money asking,
        @Nullable Boolean incomplete,
        @Nullable String place,
        @Nullable String waitingFor,
        @Nullable LocalDate expectedOn,
        boolean arrived,
        @Nullable Money landedCost)
        implements Fact {
    public static final String UNKNOWN = "unknown";
    /** The largest diagonal, inches. */
    public static final Quantity LARGEST = Quantity.of(150);

    public TvSet {
        if (maker.isBlank() || model.isBlank() || family.isBlank()) {
            throw new IllegalArgumentException("maker, model and family must be given; \"unknown\" where not known");
        }
        requireSize("inches", inches);
        requireSize("listed_inches", listedInches);
        if (line != null && line < 1) {
            throw new IllegalArgumentException("line must be at least 1, not " + line);
        }
        if (rows != null && rows < 1) {
            throw new IllegalArgumentException("rows must be at least 1, not " + rows);
        }
        Amounts.requireNotNegative("asking", asking);
        Amounts.requireNotNegative("landed_cost", landedCost);
    }

    private static void requireSize(String column, @Nullable Quantity size) {
        if (size != null && (size.millionths() <= 0 || size.compareTo(LARGEST) > 0)) {
            throw new IllegalArgumentException(column + " must be above 0 and at most 150, not " + size);
        }
    }

    public static Builder builder(UnitId unit, LotId lot) {
        return new Builder(unit, lot);
    }

    public Builder toBuilder() {
        return new Builder(this, unit);
    }

    /** The same set under another label, before it is on record. */
    public TvSet labelled(UnitId label) {
        return new Builder(this, label).build();
    }

    /** Changes some of many columns by name; a set starts as an unknown one that arrived, claimed untested. */
    public static final class Builder {
        private final UnitId unit;
        private final LotId lot;
        private @Nullable String sheet;
        private @Nullable Integer line;
        private String maker = UNKNOWN;
        private String model = UNKNOWN;
        private String family = UNKNOWN;
        private @Nullable String serial;
        private @Nullable Quantity inches;
        private @Nullable String listedMaker;
        private @Nullable String listedModel;
        private @Nullable Quantity listedInches;
        private @Nullable Integer rows;
        private @Nullable String panel;
        private Claim claimed = Claim.UNTESTED;
        private @Nullable String claimedText;
        private @Nullable Money asking;
        private @Nullable Boolean incomplete;
        private @Nullable String place;
        private @Nullable String waitingFor;
        private @Nullable LocalDate expectedOn;
        private boolean arrived = true;
        private @Nullable Money landedCost;

        private Builder(UnitId unit, LotId lot) {
            this.unit = unit;
            this.lot = lot;
        }

        private Builder(TvSet s, UnitId label) {
            this(label, s.lot);
            sheet = s.sheet;
            line = s.line;
            maker = s.maker;
            model = s.model;
            family = s.family;
            serial = s.serial;
            inches = s.inches;
            listedMaker = s.listedMaker;
            listedModel = s.listedModel;
            listedInches = s.listedInches;
            rows = s.rows;
            panel = s.panel;
            claimed = s.claimed;
            claimedText = s.claimedText;
            asking = s.asking;
            incomplete = s.incomplete;
            place = s.place;
            waitingFor = s.waitingFor;
            expectedOn = s.expectedOn;
            arrived = s.arrived;
            landedCost = s.landedCost;
        }

        public Builder sheet(@Nullable String value) {
            sheet = value;
            return this;
        }

        public Builder line(@Nullable Integer value) {
            line = value;
            return this;
        }

        public Builder maker(String value) {
            maker = value;
            return this;
        }

        public Builder model(String value) {
            model = value;
            return this;
        }

        public Builder family(String value) {
            family = value;
            return this;
        }

        public Builder serial(@Nullable String value) {
            serial = value;
            return this;
        }

        public Builder inches(@Nullable Quantity value) {
            inches = value;
            return this;
        }

        public Builder listedMaker(@Nullable String value) {
            listedMaker = value;
            return this;
        }

        public Builder listedModel(@Nullable String value) {
            listedModel = value;
            return this;
        }

        public Builder listedInches(@Nullable Quantity value) {
            listedInches = value;
            return this;
        }

        public Builder rows(@Nullable Integer value) {
            rows = value;
            return this;
        }

        public Builder panel(@Nullable String value) {
            panel = value;
            return this;
        }

        public Builder claimed(Claim value) {
            claimed = value;
            return this;
        }

        public Builder claimedText(@Nullable String value) {
            claimedText = value;
            return this;
        }

        public Builder asking(@Nullable Money value) {
            asking = value;
            return this;
        }

        public Builder incomplete(@Nullable Boolean value) {
            incomplete = value;
            return this;
        }

        public Builder place(@Nullable String value) {
            place = value;
            return this;
        }

        public Builder waitingFor(@Nullable String value) {
            waitingFor = value;
            return this;
        }

        public Builder expectedOn(@Nullable LocalDate value) {
            expectedOn = value;
            return this;
        }

        public Builder arrived(boolean value) {
            arrived = value;
            return this;
        }

        public Builder landedCost(@Nullable Money value) {
            landedCost = value;
            return this;
        }

        public TvSet build() {
            return new TvSet(
                    unit,
                    lot,
                    sheet,
                    line,
                    maker,
                    model,
                    family,
                    serial,
                    inches,
                    listedMaker,
                    listedModel,
                    listedInches,
                    rows,
                    panel,
                    claimed,
                    claimedText,
                    asking,
                    incomplete,
                    place,
                    waitingFor,
                    expectedOn,
                    arrived,
                    landedCost);
        }
    }
}
