package org.salvedge.shop;

/** Something the shop puts on record. The ledger keeps facts; each fact mirrors one row of the history package. */
public sealed interface Fact permits Lot, TvSet, Attempt, Exit, Comeback, Part, Recipe, Bid, Offer {}
