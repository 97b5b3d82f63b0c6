package org.salvedge.worth;

/**
 * What the figures of a line rest on.
 *
 * @param basis in words
 * @param certain whether the family of its sets is known, not guessed
 * @param seen sets of that family and claim with a known fate
 */
public record LineGrounds(String basis, boolean certain, int seen) {}
