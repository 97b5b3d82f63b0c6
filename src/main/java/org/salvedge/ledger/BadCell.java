package org.salvedge.ledger;

/** A text that is not what its column holds: what is wrong, and what to do. */
@SuppressWarnings("serial") // never serialised
final class BadCell extends RuntimeException {
    private final String advice;

    BadCell(String problem, String advice) {
        super(problem, null, false, false);
        this.advice = advice;
    }

    String problem() {
        return String.valueOf(getMessage());
    }

    String advice() {
        return advice;
    }
}
