package org.salvedge.manifest;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Settings;

/** Reads a seller's spreadsheet: bytes, grid, header, fields, sets and problems. */
public final class ManifestReader {
    /** @param settings the shop's own header words ([columns]) and symptom words ([symptoms]) */
    public ManifestReader(Settings settings) {}

    /**
     * @param password for a protected workbook, or null
     * @throws org.salvedge.shop.Refused if the file is no table that can be read, naming the file and the reason
     */
    public Manifest read(Path file, @Nullable String password) {
        throw new UnsupportedOperationException();
    }
}
