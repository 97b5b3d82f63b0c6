package org.salvedge.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;

/**
 * The world as the program sees it; {@link Main} knows the real one, tests make their own.
 *
 * @param clock time and the machine's zone
 * @param out what was asked for
 * @param err problems and progress
 * @param folder relative paths start here
 * @param environment variables
 */
record Surroundings(
        Clock clock,
        PrintWriter out,
        PrintWriter err,
        Path folder,
        Map<String, String> environment,
        Terminal terminal) {

    /** A file named on the command line. */
    Path file(String name) {
        return folder.resolve(name).normalize();
    }
}
