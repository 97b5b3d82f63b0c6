package org.salvedge.report;

/** From a figure of the month's first page to the list it is counted from. */
final class FrontLinks {
    private FrontLinks() {}

    /** Name of the sheet whose rows, filtered by month decided or gone, stand behind the figure. */
    static String sheet(String figure) {
        if (figure.startsWith("sets received")) {
            return "Lots";
        }
        return figure.startsWith("comebacks") ? "Comebacks" : TraceTables.SETS;
    }
}
