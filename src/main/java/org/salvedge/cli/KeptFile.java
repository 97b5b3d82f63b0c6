package org.salvedge.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Refused;

/** A seller's list on its way into the shop's folder of lists: beside its place until the lot is booked. */
final class KeptFile {
    private static final int LONGEST = 80;

    private final @Nullable Path part;
    private final Path folder;
    private final String lot;
    private final String name;
    private @Nullable Path place;

    /** @param part its bytes, to be moved; null if it is in place */
    private KeptFile(@Nullable Path part, Path folder, String lot, String name, @Nullable Path place) {
        this.part = part;
        this.folder = folder;
        this.lot = lot;
        this.name = name;
        this.place = place;
    }

    /**
     * @param lot tells files of one name apart
     * @param sha256 of the bytes that were read, lower-case hexadecimal
     * @throws Refused if the file is another by now
     */
    static KeptFile copy(Path source, Path folder, String lot, String sha256) {
        try {
            Files.createDirectories(folder);
            if (source.getParent() != null && Files.isSameFile(source.getParent(), folder)) {
                requireSame(source, source, sha256);
                return new KeptFile(null, folder, "", "", source);
            }
            Path name = source.getFileName();
            String safe = safe(name == null ? "list" : name.toString());
            Path part = Files.createTempFile(folder, ".", ".part");
            try {
                Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
                requireSame(source, part, sha256);
            } catch (IOException | Refused e) {
                Files.deleteIfExists(part);
                throw e;
            }
            return new KeptFile(part, folder, safe(lot), safe, null);
        } catch (IOException e) {
            throw new UncheckedIOException(folder + ": the list could not be kept: " + e.getMessage(), e);
        }
    }

    /** What is kept must be what was booked. */
    private static void requireSame(Path source, Path copy, String sha256) throws IOException {
        try (InputStream in = Files.newInputStream(copy)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
            if (!HexFormat.of().formatHex(digest.digest()).equals(sha256)) {
                throw new Refused(source.getFileName() + " changed while it was read. Receive it again");
            }
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Java promises SHA-256", e);
        }
    }

    /** Letters, digits, point, hyphen and underscore; never hidden; the ending stays. */
    static String safe(String name) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean plain =
                    c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '.';
            out.append(plain ? c : '-');
        }
        String plain =
                out.toString().replaceAll("-+", "-").replaceAll("\\.{2,}", ".").replaceAll("^[.-]+", "");
        int dot = plain.lastIndexOf('.');
        String ending =
                dot > 0 && plain.length() - dot <= 6 ? plain.substring(dot).toLowerCase(Locale.ROOT) : "";
        String stem = plain.substring(0, plain.length() - ending.length());
        String shortened = stem.substring(0, Math.min(stem.length(), LONGEST));
        return (shortened.isEmpty() ? "list" : shortened) + ending;
    }

    /** Puts it in place, under the first name that nobody has: another receipt may be putting its own there. */
    void settle() {
        if (part == null) {
            return;
        }
        try {
            place = newFile();
            Files.move(part, place, StandardCopyOption.ATOMIC_MOVE); // over the empty file that keeps the name
        } catch (IOException e) {
            throw new UncheckedIOException(folder + ": the list could not be put there: " + e.getMessage(), e);
        }
    }

    private Path newFile() throws IOException {
        for (int i = 0; ; i++) {
            String free = i == 0 ? name : lot + (i == 1 ? "-" : "-" + i + "-") + name;
            try {
                return Files.createFile(folder.resolve(free));
            } catch (FileAlreadyExistsException e) {
                // The next name.
            }
        }
    }

    /** Where it stands, once it has settled. */
    Path place() {
        return Objects.requireNonNull(place, "not settled");
    }

    /** Takes away what was put here. */
    void drop() {
        if (part == null) {
            return;
        }
        try {
            Files.deleteIfExists(part);
            if (place != null) {
                Files.deleteIfExists(place);
            }
        } catch (IOException e) {
            // The failure that led here is told; a leftover .part file harms nothing.
        }
    }
}
