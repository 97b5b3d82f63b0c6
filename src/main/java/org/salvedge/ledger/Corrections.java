package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Follows corrections back through time. */
record Corrections(Connection connection) {

    /**
     * The entry whose values stand again when that one is undone; 0 where the thing itself goes. An amendment gives way to what
     * it amended. An entry that brought older values back counts as the one that first had them, so that undoing goes on from
     * there and never to and fro. A share of landed cost that changed because something else did is no step of its own.
     */
    long before(long entry) throws SQLException {
        long old = Database.number(connection, "SELECT old FROM supersede WHERE new = ?", 0, entry);
        if (old == 0) {
            return 0;
        }
        try (PreparedStatement select = connection.prepareStatement(
                "SELECT first, what FROM batch WHERE first <= ? ORDER BY first DESC LIMIT 1")) {
            select.setLong(1, entry);
            try (ResultSet batch = select.executeQuery()) {
                if (!batch.next() || batch.getLong(1) != entry) {
                    return before(old);
                }
                return batch.getString(2).equals(Batches.UNDO) ? before(before(old)) : old;
            }
        }
    }

    /** Entries that an amendment brought with it: shares of landed cost that had to change, a lot's basis. */
    List<Long> followersOf(long amendment) throws SQLException {
        long last = Database.number(
                connection, "SELECT last FROM batch WHERE first = ? AND what = ?", amendment, amendment, Batches.AMEND);
        List<Long> followers = new ArrayList<>();
        for (long entry = amendment + 1; entry <= last; entry++) {
            followers.add(entry);
        }
        return followers;
    }
}
