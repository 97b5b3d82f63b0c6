package org.salvedge.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.GridReader;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** Reads a seller's spreadsheet: bytes, grid, header, fields, sets and problems. */
public final class ManifestReader {
    private static final long LARGEST = 256L << 20;

    private final ColumnWords columns;
    private final SymptomWords symptoms;

    /** @param settings the shop's own header words ([columns]) and symptom words ([symptoms]) */
    public ManifestReader(Settings settings) {
        columns = new ColumnWords(settings.columns());
        symptoms = new SymptomWords(settings.symptoms());
    }

    /**
     * @param password for a protected workbook, or null
     * @throws Refused if the file is no table that can be read, naming the file and the reason
     */
    public Manifest read(Path file, @Nullable String password) {
        String name = visible(
                file.getFileName() == null
                        ? file.toString()
                        : file.getFileName().toString());
        requirePlainFile(file, name);
        Path copy = null;
        try {
            copy = Files.createTempFile("salvedge", ".list");
            String sha256 = copy(file, copy);
            return understand(name, sha256, GridReader.read(copy, name, password));
        } catch (IOException e) {
            throw new Refused(name + " cannot be read: " + e.getMessage());
        } finally {
            if (copy != null) {
                try {
                    Files.deleteIfExists(copy);
                } catch (IOException e) {
                    // A leftover copy in the temporary folder harms nothing.
                }
            }
        }
    }

    private Manifest understand(String name, String sha256, List<Sheet> sheets) {
        Finds finds = new Finds(name, new ClaimReader(symptoms));
        SheetReader reader = new SheetReader(columns, finds);
        for (Sheet sheet : sheets) {
            if (sheet.isVisible()) {
                reader.read(sheet);
            }
        }
        Header header = finds.first();
        if (header == null) {
            throw new Refused(
                    name + " holds no table of sets: no row with headings such as maker, model, size was found. "
                            + "Name the seller's headings under [columns] in shop.toml.");
        }
        if (finds.sets().isEmpty() && finds.problems().isEmpty()) {
            throw new Refused(name + " holds a header and no sets under it. Ask the seller for the whole list.");
        }
        return new Manifest(
                name,
                sha256,
                finds.firstSheet(),
                header.row(),
                Map.copyOf(header.answer()),
                finds.sets(),
                finds.problems());
    }

    private static void requirePlainFile(Path file, String name) {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new Refused(name + " is not there. Check the name and the folder.");
        }
        if (!Files.isRegularFile(file)) {
            throw new Refused(name + " is no plain file" + (Files.isDirectory(file) ? " but a folder" : "")
                    + ". Give the spreadsheet itself.");
        }
    }

    private static String copy(Path file, Path copy) throws IOException {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java platform has it
        }
        long total = 0;
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file);
                OutputStream out = Files.newOutputStream(copy)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                total += n;
                if (total > LARGEST) {
                    throw new Refused(file.getFileName() + " is larger than " + (LARGEST >> 20)
                            + " MiB. Split the list into smaller files.");
                }
                digest.update(buffer, 0, n);
                out.write(buffer, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** A file's name may hold control characters, which must not reach the terminal. */
    private static String visible(String name) {
        return name.replaceAll("\\p{Cntrl}", "?");
    }
}
