package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The seller's file, read once into a temporary file of ours that goes when this is closed. */
final class PrivateCopy implements AutoCloseable {
    private static final int BUFFER = 1 << 16;
    private static final int HEAD = 1 << 14;

    private final Path path;
    private final long size;
    private final String sha256;

    private PrivateCopy(Path path, long size, String sha256) {
        this.path = path;
        this.size = size;
        this.sha256 = sha256;
    }

    /** @throws BadFile if it is missing, no plain file, empty or too large */
    static PrivateCopy of(Path file, Limits limits) throws IOException {
        requirePlainFile(file);
        Path copy;
        try {
            copy = Files.createTempFile("salvedge-", ".copy");
        } catch (IOException e) {
            throw new BadFile(
                    "cannot be copied to the folder for temporary files",
                    "Make room in " + System.getProperty("java.io.tmpdir") + " or let it be written to");
        }
        copy.toFile().deleteOnExit();
        try {
            MessageDigest digest = sha256();
            long size = copy(file, copy, digest, limits.fileBytes());
            return new PrivateCopy(copy, size, HexFormat.of().formatHex(digest.digest()));
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(copy);
            throw e;
        }
    }

    /** Never opens what could make the reader wait: pipes, sockets, devices, folders, and links to them. */
    private static void requirePlainFile(Path file) throws IOException {
        BasicFileAttributes attributes;
        try {
            attributes = Files.readAttributes(file, BasicFileAttributes.class);
        } catch (NoSuchFileException e) {
            throw new BadFile("does not exist", "Check the name and the folder");
        } catch (IOException e) {
            throw new BadFile("cannot be looked at", "Check the name and who may read it");
        }
        if (attributes.isDirectory()) {
            throw new BadFile("is a folder", "Name the spreadsheet in it");
        }
        if (!attributes.isRegularFile()) {
            throw new BadFile("is no plain file but a pipe, a socket or a device", "Save the list to a file first");
        }
        if (attributes.size() == 0) {
            throw new BadFile("is empty", "Ask the seller to send it again");
        }
    }

    private static long copy(Path from, Path to, MessageDigest digest, long most) throws IOException {
        byte[] buffer = new byte[BUFFER];
        long size = 0;
        try (InputStream in = open(from);
                OutputStream out = Files.newOutputStream(to)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                size += n;
                if (size > most) {
                    throw BadFile.tooLarge("is larger than " + (most >> 20) + " MB");
                }
                digest.update(buffer, 0, n);
                out.write(buffer, 0, n);
            }
        }
        return size;
    }

    private static InputStream open(Path file) {
        try {
            return Files.newInputStream(file);
        } catch (IOException e) {
            throw new BadFile("cannot be opened", "Check who may read it");
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java has it
        }
    }

    Path path() {
        return path;
    }

    long size() {
        return size;
    }

    /** Lower-case hexadecimal. */
    String sha256Hex() {
        return sha256;
    }

    /** Its first bytes. */
    byte[] head() throws IOException {
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(HEAD);
        }
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(path);
    }
}
