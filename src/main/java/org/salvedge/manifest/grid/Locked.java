package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.function.Supplier;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.jspecify.annotations.Nullable;

/** Workbooks locked with a password (ECMA-376 encryption, MS-OFFCRYPTO). */
final class Locked {
    /** Rounds of hashing that a file may ask for: a hundred thousand is usual. */
    private static final int MOST_ROUNDS = 2_000_000;

    private static final int BUFFER = 1 << 16;

    private Locked() {}

    /** Writes the unlocked package to a file. */
    static void unlock(POIFSFileSystem locked, Supplier<@Nullable String> password, Path to, Budget budget)
            throws IOException {
        try {
            EncryptionInfo info = new EncryptionInfo(locked);
            if (info.getVerifier().getSpinCount() > MOST_ROUNDS) {
                throw BadFile.tooLarge("asks for more rounds of unlocking than any program makes");
            }
            Decryptor decryptor = Decryptor.getInstance(info);
            // Workbooks that are only write-protected carry this well-known password.
            if (!decryptor.verifyPassword(Decryptor.DEFAULT_PASSWORD)) {
                if (!decryptor.verifyPassword(ask(password, budget))) {
                    throw wrongPassword();
                }
            }
            try (InputStream in = decryptor.getDataStream(locked);
                    OutputStream out = Files.newOutputStream(to)) {
                copy(in, out, budget.limits().fileBytes());
            }
        } catch (GeneralSecurityException e) {
            throw BadFile.torn("it cannot be unlocked");
        }
    }

    /** The password; the time that a person takes to type it is not the reader's. */
    static String ask(Supplier<@Nullable String> password, Budget budget) {
        String given = password.get();
        budget.restart();
        if (given == null || given.isEmpty()) {
            throw new BadFile("needs a password", "Give it with --password");
        }
        return given;
    }

    static BadFile wrongPassword() {
        return new BadFile("does not open with that password", "Ask the seller for the right one");
    }

    private static void copy(InputStream in, OutputStream out, long most) throws IOException {
        byte[] buffer = new byte[BUFFER];
        long size = 0;
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            size += n;
            if (size > most) {
                throw BadFile.tooLarge("is larger than " + (most >> 20) + " MB");
            }
            out.write(buffer, 0, n);
        }
    }
}
