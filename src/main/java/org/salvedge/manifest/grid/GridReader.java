package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Refused;

/** Reads any file of a known kind into a {@link Grid}, from a private copy, or refuses it with the reason. */
public final class GridReader {
    private static final int SECONDS = 18;
    private static final int SECONDS_IF_LARGE = 54;
    private static final long LARGE = 20_000_000;

    private final Limits limits;

    public GridReader() {
        this(Limits.of(Runtime.getRuntime().maxMemory()));
    }

    GridReader(Limits limits) {
        this.limits = limits;
    }

    /** @param sha256 of the file's bytes, lower-case hexadecimal */
    public record Result(Grid grid, String sha256) {}

    /**
     * @param password asked for a protected workbook only; null = none is known
     * @throws Refused naming the file and the reason
     */
    public Result read(Path file, Supplier<@Nullable String> password) {
        try {
            return readCopy(file, password);
        } catch (BadFile e) {
            throw refused(file, e);
        } catch (IOException e) {
            throw refused(file, BadFile.torn("it breaks off or cannot be unpacked"));
        } catch (OutOfMemoryError e) {
            throw refused(file, BadFile.tooLarge("holds more than can be read with the memory at hand"));
        }
    }

    private Result readCopy(Path file, Supplier<@Nullable String> password) throws IOException {
        try (PrivateCopy copy = PrivateCopy.of(file, limits)) {
            Budget budget = new Budget(limits, copy.size() > LARGE ? SECONDS_IF_LARGE : SECONDS);
            try {
                return new Result(read(copy, password, budget), copy.sha256Hex());
            } catch (BadFile e) {
                throw e;
            } catch (RuntimeException | StackOverflowError e) {
                // The libraries below answer hostile bytes with exceptions of every kind.
                throw BadFile.torn("it cannot be taken apart");
            }
        }
    }

    private Grid read(PrivateCopy copy, Supplier<@Nullable String> password, Budget budget) throws IOException {
        return switch (FileKind.of(copy.head())) {
            case PACKED -> packed(copy.path(), copy.size(), budget);
            case COMPOUND -> compound(copy.path(), password, budget);
            case WEB_PAGE -> HtmlReader.read(copy.path(), budget);
            case XML_TABLE -> {
                try (InputStream in = Files.newInputStream(copy.path())) {
                    yield XmlTableReader.read(in, budget);
                }
            }
            case FLAT_ODS -> {
                try (InputStream in = Files.newInputStream(copy.path())) {
                    yield OdsReader.read(in, budget);
                }
            }
            case TEXT -> CsvReader.read(TextFile.of(copy.path()), budget);
        };
    }

    private Grid packed(Path path, long size, Budget budget) throws IOException {
        try (Parts parts = Parts.open(path, size, budget)) {
            if (parts.has("xl/workbook.bin")) {
                throw BadFile.notATable(
                        "an XLSB workbook (binary parts)", "Open it in a spreadsheet program and save it as XLSX");
            }
            if (XlsxReader.fits(parts)) {
                return XlsxReader.read(parts, budget);
            }
            if (parts.has("content.xml") && parts.has("mimetype")) {
                return openDocument(parts, budget);
            }
            throw otherPackage(parts);
        }
    }

    private static Grid openDocument(Parts parts, Budget budget) throws IOException {
        try (InputStream in = parts.need("mimetype")) {
            String type = new String(in.readNBytes(200), java.nio.charset.StandardCharsets.US_ASCII).strip();
            if (type.contains("spreadsheet")) {
                return OdsReader.read(parts, budget);
            }
            throw BadFile.notATable("an OpenDocument file of another kind", "Ask the seller for a spreadsheet");
        }
    }

    private static BadFile otherPackage(Parts parts) {
        String advice = "Ask the seller for a spreadsheet";
        if (parts.names().stream().anyMatch(name -> name.startsWith("word/"))) {
            return BadFile.notATable("a word processor's document", advice);
        }
        if (parts.names().stream().anyMatch(name -> name.startsWith("ppt/"))) {
            return BadFile.notATable("a presentation", advice);
        }
        if (parts.names().stream().anyMatch(name -> name.startsWith("index/") && name.endsWith(".iwa"))) {
            return BadFile.notATable("a Numbers document", "Open it and export it as XLSX or CSV");
        }
        if (parts.has("[Content_Types].xml") || parts.names().stream().anyMatch(name -> name.startsWith("xl/"))) {
            return BadFile.torn("its part \"xl/workbook.xml\" is missing");
        }
        return BadFile.notATable("a ZIP archive", "Unpack it and name the spreadsheet in it");
    }

    private Grid compound(Path path, Supplier<@Nullable String> password, Budget budget) throws IOException {
        try (POIFSFileSystem compound = new POIFSFileSystem(path.toFile(), true)) {
            DirectoryNode root = compound.getRoot();
            if (root.hasEntryCaseInsensitive("EncryptedPackage")) {
                return locked(compound, password, budget);
            }
            if (root.hasEntryCaseInsensitive("Workbook")) {
                return xls(root, password, budget);
            }
            if (root.hasEntryCaseInsensitive("Book")) {
                throw BadFile.notATable(
                        "a workbook of Excel 95 or older", "Open it in a spreadsheet program and save it as XLSX");
            }
            throw BadFile.notATable(
                    root.hasEntryCaseInsensitive("WordDocument")
                            ? "a word processor's document"
                            : "an office file of another kind",
                    "Ask the seller for a spreadsheet");
        }
    }

    private static Grid xls(DirectoryNode root, Supplier<@Nullable String> password, Budget budget) throws IOException {
        try {
            return XlsReader.read(root, null, budget);
        } catch (EncryptedDocumentException e) {
            String given = Locked.ask(password, budget);
            try {
                return XlsReader.read(root, given, budget);
            } catch (EncryptedDocumentException wrong) {
                throw Locked.wrongPassword();
            }
        }
    }

    private Grid locked(POIFSFileSystem compound, Supplier<@Nullable String> password, Budget budget)
            throws IOException {
        Path unlocked = Files.createTempFile("salvedge-", ".unlocked");
        unlocked.toFile().deleteOnExit();
        try {
            Locked.unlock(compound, password, unlocked, budget);
            return packed(unlocked, Files.size(unlocked), budget);
        } finally {
            Files.deleteIfExists(unlocked);
        }
    }

    private static Refused refused(Path file, BadFile why) {
        return new Refused(shownName(file) + " " + why.getMessage() + ". " + why.advice() + ".");
    }

    /** The file's name without its folder, fit for a terminal. */
    public static String shownName(Path file) {
        Path name = file.getFileName();
        return CellText.clean(name == null ? file.toString() : name.toString(), 200)
                .replace('\n', ' ');
    }
}
