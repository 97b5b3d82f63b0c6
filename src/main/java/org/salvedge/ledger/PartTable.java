package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Money;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.shop.UnitId;

/** Parts: one row a part that came out of a set, or was bought. */
final class PartTable extends Table<Part> {
    final Column<Part, String> part = key("part", Labels.OWN, "The shop's label on the part", Part::part);
    final Column<Part, UnitId> fromUnit =
            optional("from_unit", Labels.UNIT, "The set it came out of; empty = bought", Part::fromUnit);
    final Column<Part, PartKind> kind = required("kind", Types.oneOf(PartKind.class), "Kind of part", Part::kind);
    final Column<Part, String> number = optional("number", Types.TEXT, "Number printed on the part", Part::number);
    final Column<Part, LocalDate> on = required("on", Types.DATE, "Taken out, or bought", Part::on);
    final Column<Part, Money> value = required("value", Types.MONEY, "Transfer or purchase price", Part::value);
    final Column<Part, PartTest> tested =
            optional("tested", Types.oneOf(PartTest.class), "What a test of it said", Part::tested);
    final Column<Part, Integer> attempt = optional("attempt", Types.WHOLE, "The attempt it was used in", Part::attempt);
    final Column<Part, LocalDate> goneOn =
            optional("gone_on", Types.DATE, "Sold or thrown away on that day", Part::goneOn);

    PartTable() {
        super("part", 'P', Part.class);
    }

    @Override
    Part fact(Values<Part> v) {
        return new Part(
                v.need(part),
                v.get(fromUnit),
                v.need(kind),
                v.get(number),
                v.need(on),
                v.need(value),
                v.get(tested),
                v.get(attempt),
                v.get(goneOn));
    }

    @Override
    LocalDate day(Part f) {
        return f.on();
    }

    @Override
    String describe(Part f) {
        return "part " + f.part();
    }
}
