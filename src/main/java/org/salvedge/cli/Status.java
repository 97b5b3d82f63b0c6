package org.salvedge.cli;

/** Exit statuses, a contract with other programs. */
final class Status {
    /** Done. */
    static final int DONE = 0;
    /** Done, but with problems that the user must look at. */
    static final int PROBLEMS = 1;
    /** Wrong usage; nothing changed. */
    static final int USAGE = 2;
    /** Input refused; nothing changed. */
    static final int REFUSED = 3;
    /** The ledger or a report could not be read or written; nothing changed. */
    static final int UNREADABLE = 4;
    /** A defect of the program. */
    static final int DEFECT = 70;

    private Status() {}
}
