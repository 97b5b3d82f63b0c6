package org.salvedge.worth;

import org.jspecify.annotations.Nullable;

/**
 * What the model sees of a listed set; sets with the same are exchangeable.
 *
 * @param family number of the family it is taken for, -1 = none
 * @param sure chance that it is of that family
 * @param stranger sets with the same number share one unknown family if they are not of {@code family}; -1 where that is certain
 * @param mixture number of the families it may be of, where its model is not given; -1 = it is
 * @param single tells sets apart whose family is drawn for each alone; 0 for others
 * @param maker number in the history, -1 = not known there
 * @param logInches log of the diagonal over 50 inches
 * @param claim number in the {@link Codebook}
 */
record Kind(
        int family,
        double sure,
        int stranger,
        int mixture,
        int single,
        int maker,
        double logInches,
        int claim,
        @Nullable String why) {}
