package org.salvedge.worth.study;

import org.jspecify.annotations.Nullable;

/**
 * One set as the manifest lists it.
 *
 * @param model null where the list has none
 * @param claimed code of the claim
 * @param asking minor units; -1 where nothing is stated
 */
record OfferedSet(String maker, @Nullable String model, double inches, String claimed, long asking) {}
