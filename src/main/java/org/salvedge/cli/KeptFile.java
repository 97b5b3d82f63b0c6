package org.salvedge.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.salvedge.shop.Refused;

/** A seller's list on its way into the shop's folder of lists: beside its place until the lot is booked. */
final class KeptFile {
    private static final int LONGEST = 80;

    private final Path part;
    private final Path place;
    private final boolean inPlace;

    private KeptFile(Path part, Path place, boolean inPlace) {
        this.part = part;
        this.place = place;
        this.inPlace = inPlace;
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
                return new KeptFile(source, source, true);
            }
            Path name = source.getFileName();
            String safe = safe(name == null ? "list" : name.toString());
            Path place = folder.resolve(safe);
            if (Files.exists(place)) {
                place = folder.resolve(safe(lot) + "-" + safe);
            }
            for (int i = 2; Files.exists(place); i++) {
                place = folder.resolve(safe(lot) + "-" + i + "-" + safe);
            }
            Path part = Files.createTempFile(folder, ".", ".part");
            try {
                Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
                requireSame(source, part, sha256);
            } catch (IOException | Refused e) {
                Files.deleteIfExists(part);
                throw e;
            }
            return new KeptFile(part, place, false);
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

    /** Puts it in place. */
    void settle() {
        try {
            if (!inPlace) {
                Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(place + ": the list could not be put there: " + e.getMessage(), e);
        }
    }

    /** Where it stands. */
    Path place() {
        return place;
    }

    /** Takes away what was put here. */
    void drop() {
        try {
            if (!inPlace) {
                Files.deleteIfExists(part);
                Files.deleteIfExists(place);
            }
        } catch (IOException e) {
            // The failure that led here is told; a leftover .part file harms nothing.
        }
    }
}
