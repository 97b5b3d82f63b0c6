package org.salvedge.ledger;

/** Told how far a long piece of work has come; called from one thread, some times a second at most. */
@FunctionalInterface
public interface Progress {
    Progress NONE = (what, done) -> {};

    /**
     * @param what the step at hand, in a few words
     * @param done share of all the work, from 0 to 1
     */
    void step(String what, double done);

    /** For a piece of the work that goes from one share of all of it to another. */
    default Progress part(double from, double to) {
        return (what, done) -> step(what, from + (to - from) * done);
    }
}
