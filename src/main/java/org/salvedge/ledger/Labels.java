package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.Collection;
import java.util.Currency;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Part;
import org.salvedge.shop.Text;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** The types of columns that hold labels and codes, each kept as a number in a dictionary. */
final class Labels {
    static final Type<LotId> LOT = label(LotId::new, Codec::lots, LotId::value);
    static final Type<UnitId> UNIT = label(UnitId::new, Codec::units, UnitId::value);

    /** The shop's own label on something that no other row refers to. */
    static final Type<String> OWN = new Type<>("string", true) {
        @Override
        String parse(String cell, Currency lot, Codec codec) {
            return requireSeen(Parse.text(cell), cell);
        }

        @Override
        String ofText(String kept) {
            return kept;
        }
    };

    static final Type<Fault> FAULT = code(Fault::new, Codes::faults);
    static final Type<Fix> FIX = code(Fix::new, Codes::fixes);
    static final Type<Claim> CLAIM = code(Claim::new, Codes::claims);

    private Labels() {}

    /**
     * A label that goes on record for the first time shows all that it is, so that two that look the same are the same. Older
     * records may hold others, which are still read.
     *
     * @throws BadCell if it does not
     */
    static void requireSeen(Fact fact) {
        if (fact instanceof Lot lot) {
            requireSeen(lot, lot.lot().value());
        } else if (fact instanceof TvSet set) {
            requireSeen(set, set.unit().value());
        } else if (fact instanceof Part part) {
            requireSeen(part, part.part());
        }
    }

    private static <V> V requireSeen(V named, String label) {
        if (Text.holdsCommand(label)) {
            throw new BadCell(
                    "holds a character that is not seen or that turns others around", "Type the label again by hand.");
        }
        return named;
    }

    private static <V> Type<V> label(
            Function<String, V> make, Function<Codec, Dictionary> dictionary, Function<V, String> value) {
        return new Type<>("string", false) {
            @Override
            V parse(String cell, Currency lot, Codec codec) {
                V label;
                try {
                    label = make.apply(cell);
                } catch (IllegalArgumentException e) {
                    throw new BadCell("is not a label", "Use 1 to 100 characters, none at the ends a space.");
                }
                return requireSeen(label, cell);
            }

            @Override
            String format(V label) {
                return value.apply(label);
            }

            @Override
            long toNumber(V label, Codec codec) throws SQLException {
                return dictionary.apply(codec).id(value.apply(label));
            }

            @Override
            V ofNumber(long number, Currency lot, Codec codec) throws SQLException {
                return make.apply(dictionary.apply(codec).text((int) number));
            }
        };
    }

    private static <V extends Coded> Type<V> code(Function<String, V> make, Function<Codes, Map<V, String>> inForce) {
        return new Type<>("string", false) {
            @Override
            V parse(String cell, Currency lot, Codec codec) {
                Map<V, String> known = inForce.apply(codec.codes());
                for (V code : known.keySet()) {
                    if (code.code().equals(cell)) {
                        return code;
                    }
                }
                throw new BadCell("is not a known code", advice(known.keySet()));
            }

            @Override
            String format(V code) {
                return code.code();
            }

            @Override
            long toNumber(V code, Codec codec) throws SQLException {
                return codec.words().id(code.code());
            }

            @Override
            V ofNumber(long number, Currency lot, Codec codec) throws SQLException {
                return make.apply(codec.words().text((int) number));
            }
        };
    }

    /** What to do about an unknown code. */
    static String advice(Collection<? extends Coded> known) {
        return "Write one of " + known.stream().map(Coded::code).collect(Collectors.joining(", "))
                + ", or add your own under [codes] in shop.toml.";
    }
}
