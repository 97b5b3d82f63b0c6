package org.salvedge.report;

/**
 * A column of a {@link Table}.
 *
 * @param key name in CSV and JSON
 * @param heading name on the screen, unit included
 * @param where the screen, the data formats, or both
 * @param droppable left out where the screen is too narrow, the last first
 */
public record Column(String key, String heading, Kind kind, Where where, boolean droppable) {
    /** Where a column is shown. */
    public enum Where {
        EVERYWHERE,
        /** Only for people. */
        SCREEN,
        /** Only in CSV and JSON. */
        DATA
    }

    public static Column of(String key, String heading, Kind kind) {
        return new Column(key, heading, kind, Where.EVERYWHERE, false);
    }

    public static Column data(String key, Kind kind) {
        return new Column(key, key, kind, Where.DATA, false);
    }

    public static Column screen(String heading, Kind kind) {
        return new Column(heading, heading, kind, Where.SCREEN, false);
    }

    /** The same, left out where the screen is too narrow. */
    public Column asDroppable() {
        return new Column(key, heading, kind, where, true);
    }

    boolean onScreen() {
        return where != Where.DATA;
    }

    boolean inData() {
        return where != Where.SCREEN;
    }
}
