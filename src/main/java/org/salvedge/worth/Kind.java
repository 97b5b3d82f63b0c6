package org.salvedge.worth;

import java.util.Objects;
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
        @Nullable String why) {

    // By hand, as below: a record's own are put together when first used, which every start would pay for.
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Kind k
                && family == k.family
                && Double.compare(sure, k.sure) == 0
                && stranger == k.stranger
                && mixture == k.mixture
                && single == k.single
                && maker == k.maker
                && Double.compare(logInches, k.logInches) == 0
                && claim == k.claim
                && Objects.equals(why, k.why);
    }

    @Override
    public int hashCode() {
        int hash = 31 * (31 * family + stranger) + mixture;
        hash = 31 * (31 * hash + single) + maker;
        hash = 31 * (31 * hash + claim) + Objects.hashCode(why);
        return 31 * (31 * hash + Double.hashCode(sure)) + Double.hashCode(logInches);
    }
}
