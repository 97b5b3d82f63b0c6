package org.salvedge.cli;

import org.salvedge.ledger.Ledger;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.ModelBook;

/** What the shop knows of model numbers, from its settings and its record. */
final class Models {
    private Models() {}

    static ModelBook of(Session session, Ledger ledger) {
        return ModelBook.of(session.shop().settings().families(), ledger.history(AsOf.NOW, Ledger.Detail.COUNTS));
    }
}
