package org.salvedge.ledger;

import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** The ledger could not be read or written; nothing was changed. Exit status 4. */
@SuppressWarnings("serial") // never serialised
public final class LedgerFailure extends RuntimeException {
    /** @param message says what could not be done and what to do */
    public LedgerFailure(String message, @Nullable Throwable cause) {
        super(message, cause);
    }

    /** SQLite would have had to make files beside the ledger, and could not. */
    boolean isForLackOfLog() {
        if (!(getCause() instanceof SQLiteException e)) {
            return false;
        }
        int code = e.getResultCode().code & 0xff;
        return code == SQLiteErrorCode.SQLITE_IOERR.code
                || code == SQLiteErrorCode.SQLITE_FULL.code
                || code == SQLiteErrorCode.SQLITE_CANTOPEN.code
                || code == SQLiteErrorCode.SQLITE_READONLY.code;
    }
}
