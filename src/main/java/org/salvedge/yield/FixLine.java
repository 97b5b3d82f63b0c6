package org.salvedge.yield;

/**
 * How one fix did on one fault in the twelve months up to the month's end, and in the month.
 *
 * @param family "" = over all families
 * @param attempts that passed or failed
 * @param success shrunk: a family's cells to the fix on that fault, these to the fault
 * @param minutesMedian of diagnosis and fix together, failures included
 * @param parts mean cost an attempt, units of the currency
 * @param first attempts that were their set's first at that fault
 * @param increment of a first attempt: what saving the set adds to giving it up, if it passed, less its parts and labour; units of the
 *     currency, with the interval of its mean, lots taken as whole
 * @param perHour the same increments before labour, an hour of bench time
 * @param monthAttempts in the month itself
 * @param monthSaved those of them that passed
 */
public record FixLine(
        String family,
        String fault,
        String fix,
        int attempts,
        int saved,
        Range success,
        double minutesMedian,
        double minutesPerSaved,
        double parts,
        int first,
        Range increment,
        double perHour,
        int monthAttempts,
        int monthSaved) {}
