package org.salvedge.worth;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputFilter;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.OutputStream;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.CheckedOutputStream;

/**
 * A fitted model in a file: the key it was fitted under, the model, and a check sum of both. A file under another key, of another
 * build, or damaged is no model. Only classes of ours and plain collections are read from it.
 */
public final class ModelFile {
    private static final int BUFFER = 1 << 20;
    private static final int SUM = Long.BYTES;
    private static final ObjectInputFilter OURS = ObjectInputFilter.Config.createFilter(
            "org.salvedge.**;java.lang.*;java.util.*;it.unimi.dsi.fastutil.**;!*");

    private ModelFile() {}

    public static void write(Serializable model, String key, OutputStream to) throws IOException {
        CheckedOutputStream summed = new CheckedOutputStream(new BufferedOutputStream(to, BUFFER), new CRC32());
        DataOutputStream head = new DataOutputStream(summed);
        head.writeUTF(key);
        ObjectOutputStream objects = new ObjectOutputStream(head);
        objects.writeObject(model);
        objects.flush();
        head.writeLong(summed.getChecksum().getValue());
        head.flush();
    }

    /** Empty where the file is not there, or holds no model under this key. */
    public static <T extends Serializable> Optional<T> read(Path file, String key, Class<T> model) {
        try {
            if (!Files.isRegularFile(file) || !key.equals(key(file)) || !whole(file)) {
                return Optional.empty();
            }
            try (DataInputStream head =
                    new DataInputStream(new BufferedInputStream(Files.newInputStream(file), BUFFER))) {
                head.readUTF();
                ObjectInputStream objects = new ObjectInputStream(head);
                objects.setObjectInputFilter(OURS);
                return Optional.of(model.cast(objects.readObject()));
            }
        } catch (IOException | ClassNotFoundException | RuntimeException e) {
            return Optional.empty(); // fitted anew, which costs time and nothing else
        }
    }

    private static String key(Path file) throws IOException {
        try (DataInputStream head = new DataInputStream(Files.newInputStream(file))) {
            return head.readUTF();
        }
    }

    private static boolean whole(Path file) throws IOException {
        CRC32 sum = new CRC32();
        long left = Files.size(file) - SUM;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] buffer = new byte[BUFFER];
            while (left > 0) {
                int n = in.read(buffer, 0, (int) Math.min(buffer.length, left));
                if (n < 0) {
                    return false;
                }
                sum.update(buffer, 0, n);
                left -= n;
            }
            return left == 0 && new DataInputStream(in).readLong() == sum.getValue();
        }
    }
}
