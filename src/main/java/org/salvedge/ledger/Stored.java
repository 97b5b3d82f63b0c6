package org.salvedge.ledger;

import org.salvedge.shop.Fact;

/** A fact and the number of the entry that put it on record. */
record Stored<F extends Fact>(long entry, F fact) {}
