package org.salvedge.manifest.grid;

/** The file cannot be read as a table: why, and what to do. Turned into a refusal that also names the file. */
@SuppressWarnings("serial") // never serialised
final class BadFile extends RuntimeException {
    private final String advice;

    /**
     * @param reason follows the file's name: "is empty"
     * @param advice a sentence without its full stop
     */
    BadFile(String reason, String advice) {
        super(reason, null, false, false);
        this.advice = advice;
    }

    static BadFile torn(String detail) {
        return new BadFile("is damaged: " + detail, "Ask the seller to send it again, or open it and save it anew");
    }

    static BadFile tooLarge(String detail) {
        return new BadFile(detail, "Split the list into smaller files, or ask the seller for a plain copy");
    }

    static BadFile notATable(String whatItIs, String advice) {
        return new BadFile("is " + whatItIs + ", not a spreadsheet", advice);
    }

    String advice() {
        return advice;
    }
}
