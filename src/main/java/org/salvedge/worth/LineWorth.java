package org.salvedge.worth;

import org.jspecify.annotations.Nullable;

/**
 * What one line of the manifest adds to the lot.
 *
 * @param sets number of sets of the line
 * @param model as listed, "" if it is not said
 * @param family the model family it is taken for, "" for none known
 * @param recoveryMean for all sets of the line together, with their share of the lot's own labour: all lines add up to the lot's mean
 * @param recoverySd of the line alone
 * @param pSaved chance that a set of the line is saved
 * @param minutesMean bench minutes for all sets of the line together
 * @param route what most likely becomes of a set: fix, sell as is, strip, recycle
 * @param basis what the figures rest on, in words
 */
public record LineWorth(
        @Nullable String sheet,
        @Nullable Integer line,
        int sets,
        String model,
        String family,
        String claimed,
        double recoveryMean,
        double recoverySd,
        double pSaved,
        double minutesMean,
        Route route,
        String basis) {}
