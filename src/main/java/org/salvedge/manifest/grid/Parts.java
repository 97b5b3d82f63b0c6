package org.salvedge.manifest.grid;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.jspecify.annotations.Nullable;

/** The parts of a packed file (ZIP), each read no further than the limits on unpacking allow and checked against its sum. */
final class Parts implements AutoCloseable {
    private static final int LOOK_EVERY = 1 << 20;

    private final ZipFile zip;
    private final TreeMap<String, ZipEntry> entries = new TreeMap<>();
    private final Budget budget;
    private final long mayUnpack;
    private long unpacked;

    private Parts(ZipFile zip, Budget budget, long mayUnpack) {
        this.zip = zip;
        this.budget = budget;
        this.mayUnpack = mayUnpack;
    }

    /** @throws BadFile if it is torn, locked or has too many parts */
    static Parts open(Path path, long size, Budget budget) throws IOException {
        ZipFile zip;
        try {
            zip = new ZipFile(path.toFile());
        } catch (ZipException e) {
            String why = String.valueOf(e.getMessage());
            if (why.contains("encrypted")) {
                throw new BadFile("is a ZIP archive with a password", "Unpack it first");
            }
            throw BadFile.torn("it is a packed file whose table of contents is missing or broken");
        }
        Parts parts = new Parts(zip, budget, budget.limits().unpackedFor(size));
        try {
            parts.list();
        } catch (RuntimeException e) {
            zip.close();
            throw e instanceof BadFile ? e : BadFile.torn("its table of contents cannot be read");
        }
        return parts;
    }

    private void list() {
        Enumeration<? extends ZipEntry> all = zip.entries();
        while (all.hasMoreElements()) {
            ZipEntry entry = all.nextElement();
            if (entries.size() >= budget.limits().parts()) {
                throw BadFile.tooLarge(
                        "is packed from more than " + budget.limits().parts() + " parts");
            }
            entries.putIfAbsent(key(entry.getName()), entry);
        }
    }

    /** Part names are compared without regard to case (ECMA-376 Part 2), and some writers use backslashes. */
    private static String key(String name) {
        String slashed = name.replace('\\', '/');
        return (slashed.startsWith("/") ? slashed.substring(1) : slashed).toLowerCase(Locale.ROOT);
    }

    boolean has(String name) {
        return entries.containsKey(key(name));
    }

    /** All names in lower case, in order. */
    Set<String> names() {
        return entries.keySet();
    }

    /** The unpacked bytes of a part, or null if there is none of that name. */
    @Nullable
    InputStream find(String name) throws IOException {
        ZipEntry entry = entries.get(key(name));
        if (entry == null) {
            return null;
        }
        InputStream in = zip.getInputStream(entry);
        if (in == null) {
            throw BadFile.torn("its part " + name + " cannot be read");
        }
        return new Counted(in, entry.getCrc());
    }

    /** @throws BadFile if there is no such part */
    InputStream need(String name) throws IOException {
        InputStream in = find(name);
        if (in == null) {
            throw BadFile.torn("its part \"" + name + "\" is missing");
        }
        return in;
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }

    /** Counts what comes out, and at the end compares the checksum. */
    private final class Counted extends FilterInputStream {
        private final CRC32 crc = new CRC32();
        private final long expected;
        private long sinceLook;

        Counted(InputStream in, long expected) {
            super(in);
            this.expected = expected;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int n = in.read(into, from, length);
            if (n > 0) {
                crc.update(into, from, n);
                count(n);
            } else if (n < 0 && expected >= 0 && crc.getValue() != expected) {
                throw BadFile.torn("the checksum of one of its parts does not fit");
            }
            return n;
        }

        private void count(int n) {
            unpacked += n;
            sinceLook += n;
            if (unpacked > mayUnpack) {
                throw BadFile.tooLarge("swells beyond reason when unpacked");
            }
            if (sinceLook > LOOK_EVERY) {
                sinceLook = 0;
                budget.checkTime();
            }
        }
    }
}
