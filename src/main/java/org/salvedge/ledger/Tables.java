package org.salvedge.ledger;

import java.util.List;
import org.salvedge.shop.Fact;

/** All kinds of facts, in the order in which a package is read: what is referred to comes first. */
final class Tables {
    static final LotTable LOTS = new LotTable();
    static final UnitTable UNITS = new UnitTable();
    static final AttemptTable ATTEMPTS = new AttemptTable();
    static final ExitTable EXITS = new ExitTable();
    static final ComebackTable COMEBACKS = new ComebackTable();
    static final PartTable PARTS = new PartTable();
    static final RecipeTable RECIPES = new RecipeTable();
    static final BidTable BIDS = new BidTable();
    static final OfferTable OFFERS = new OfferTable();

    static final List<Table<?>> ALL = List.of(LOTS, UNITS, ATTEMPTS, EXITS, COMEBACKS, PARTS, RECIPES, BIDS, OFFERS);

    private Tables() {}

    @SuppressWarnings("unchecked") // the table with that kind is of that kind
    static <F extends Fact> Table<F> of(Class<F> kind) {
        for (Table<?> table : ALL) {
            if (table.kind() == kind) {
                return (Table<F>) table;
            }
        }
        throw new IllegalArgumentException("no table holds " + kind);
    }

    @SuppressWarnings("unchecked") // a fact is of its own class
    static <F extends Fact> Table<F> of(F fact) {
        return of((Class<F>) fact.getClass());
    }
}
