package org.salvedge.report;

/**
 * A column of a {@link Table}.
 *
 * @param key name in CSV and JSON
 * @param heading name on the screen, unit included; a line feed breaks it
 * @param where the screen, the data formats, or both
 * @param spare 0 = always shown; else left out where the screen is too narrow, greater numbers first
 */
public record Column(String key, String heading, Kind kind, Where where, int spare) {
    /** Where a column is shown. */
    public enum Where {
        EVERYWHERE,
        /** Only for people. */
        SCREEN,
        /** Only in CSV and JSON. */
        DATA
    }

    public static Column of(String key, String heading, Kind kind) {
        return new Column(key, heading, kind, Where.EVERYWHERE, 0);
    }

    public static Column data(String key, Kind kind) {
        return new Column(key, key, kind, Where.DATA, 0);
    }

    /** Not on the screen, but in workbooks, where people read it too. */
    public static Column data(String key, String heading, Kind kind) {
        return new Column(key, heading, kind, Where.DATA, 0);
    }

    public static Column screen(String heading, Kind kind) {
        return new Column(heading, heading, kind, Where.SCREEN, 0);
    }

    /** The same, left out where the screen is too narrow. */
    public Column asDroppable() {
        return asDroppable(1);
    }

    /** The same, left out where the screen is too narrow, after those with a greater number. */
    public Column asDroppable(int rank) {
        return new Column(key, heading, kind, where, rank);
    }

    boolean onScreen() {
        return where != Where.DATA;
    }

    boolean inData() {
        return where != Where.SCREEN;
    }
}
