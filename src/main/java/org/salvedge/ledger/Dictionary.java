package org.salvedge.ledger;

import java.sql.SQLException;

/** Texts with whole numbers for them, from 1. */
interface Dictionary {
    /** The number of a text, given it now if it is new. */
    int id(String text) throws SQLException;

    /** The number of a text, or -1. */
    int find(String text) throws SQLException;

    String text(int id) throws SQLException;
}
