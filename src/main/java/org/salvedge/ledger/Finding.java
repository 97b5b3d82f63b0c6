package org.salvedge.ledger;

/**
 * What {@code audit} found wrong.
 *
 * @param rule the rule that does not hold, in a few words
 * @param where which entry, set or lot
 * @param what what is wrong, with the figures
 */
public record Finding(String rule, String where, String what) {}
