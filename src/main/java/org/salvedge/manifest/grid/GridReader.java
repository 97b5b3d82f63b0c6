package org.salvedge.manifest.grid;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Refused;

/** Reads the sheets of a file, whatever its format. */
public final class GridReader {
    private GridReader() {}

    /**
     * @param copy a private copy of the seller's file
     * @param name the file's own name, for messages
     * @throws Refused if it cannot be read as a table
     */
    public static List<Sheet> read(Path copy, String name, @Nullable String password) {
        Budget budget = new Budget(Limits.of(Runtime.getRuntime().maxMemory()), 18);
        try {
            return Formats.read(copy, password, budget);
        } catch (BadFile e) {
            throw new Refused(name + " " + e.getMessage() + ". " + e.advice() + ".");
        } catch (Refused e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new Refused(name + " is damaged: " + e.getClass().getSimpleName()
                    + ". Ask the seller to send it again, or open it and save it anew.");
        }
    }
}
