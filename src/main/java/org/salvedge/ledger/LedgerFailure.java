package org.salvedge.ledger;

/** The ledger could not be read or written; nothing was changed. Exit status 4. */
@SuppressWarnings("serial") // never serialised
public final class LedgerFailure extends RuntimeException {
    /** @param message says what could not be done and what to do */
    public LedgerFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
