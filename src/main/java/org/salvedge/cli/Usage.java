package org.salvedge.cli;

/** The command line cannot mean anything. Exit status 2. */
@SuppressWarnings("serial") // never serialised
final class Usage extends RuntimeException {
    /** @param message names the option, the text found and what to write */
    Usage(String message) {
        super(message);
    }
}
