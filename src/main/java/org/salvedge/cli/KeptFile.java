package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;

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

    /** @param lot tells files of one name apart */
    static KeptFile copy(Path source, Path folder, String lot) {
        try {
            Files.createDirectories(folder);
            if (source.getParent() != null && Files.isSameFile(source.getParent(), folder)) {
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
            Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
            return new KeptFile(part, place, false);
        } catch (IOException e) {
            throw new UncheckedIOException(folder + ": the list could not be kept: " + e.getMessage(), e);
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
