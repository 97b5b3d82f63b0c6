package org.salvedge.manifest.grid;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.mozilla.universalchardet.UniversalDetector;

/** Which characters the bytes of a text file stand for. */
record TextFile(Path path, Charset charset, int markLength) {
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final int SAMPLE = 1 << 20;

    /** Above this share of bytes beyond ASCII a text is not written in Latin letters. */
    private static final double FOREIGN = 0.2;

    static TextFile of(Path path) throws IOException {
        byte[] sample;
        try (InputStream in = Files.newInputStream(path)) {
            sample = in.readNBytes(SAMPLE);
        }
        if (starts(sample, 0xEF, 0xBB, 0xBF)) {
            return new TextFile(path, StandardCharsets.UTF_8, 3);
        }
        if (starts(sample, 0xFF, 0xFE, 0, 0)) {
            return new TextFile(path, Charset.forName("UTF-32LE"), 4);
        }
        if (starts(sample, 0, 0, 0xFE, 0xFF)) {
            return new TextFile(path, Charset.forName("UTF-32BE"), 4);
        }
        if (starts(sample, 0xFF, 0xFE)) {
            return new TextFile(path, StandardCharsets.UTF_16LE, 2);
        }
        if (starts(sample, 0xFE, 0xFF)) {
            return new TextFile(path, StandardCharsets.UTF_16BE, 2);
        }
        return new TextFile(path, guess(path, sample), 0);
    }

    private static Charset guess(Path path, byte[] sample) throws IOException {
        int even = 0;
        int odd = 0;
        int high = 0;
        for (int i = 0; i < sample.length; i++) {
            if (sample[i] == 0) {
                even += 1 - (i & 1);
                odd += i & 1;
            }
            high += sample[i] < 0 ? 1 : 0;
        }
        int quarter = sample.length / 4;
        if (odd > quarter && even < quarter / 10) {
            return StandardCharsets.UTF_16LE;
        }
        if (even > quarter && odd < quarter / 10) {
            return StandardCharsets.UTF_16BE;
        }
        if (isMostlyUtf8(path)) {
            return StandardCharsets.UTF_8;
        }
        UniversalDetector detector = new UniversalDetector();
        detector.handleData(sample, 0, sample.length);
        detector.dataEnd();
        String found = detector.getDetectedCharset();
        boolean foreign = high > FOREIGN * sample.length;
        return found != null && foreign && Charset.isSupported(found) ? Charset.forName(found) : WINDOWS;
    }

    /** Whether the file is UTF-8, but for a rare broken byte among many sound sequences. */
    private static boolean isMostlyUtf8(Path path) throws IOException {
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
        ByteBuffer bytes = ByteBuffer.allocate(1 << 16);
        CharBuffer chars = CharBuffer.allocate(1 << 16);
        long broken = 0;
        long beyondAscii = 0;
        try (InputStream in = Files.newInputStream(path)) {
            boolean end = false;
            while (!end) {
                int n = in.read(bytes.array(), bytes.position(), bytes.remaining());
                end = n < 0;
                bytes.limit(bytes.position() + Math.max(n, 0)).position(0);
                CoderResult result;
                do {
                    result = decoder.decode(bytes, chars, end);
                    beyondAscii += beyondAscii(chars.flip());
                    chars.clear();
                    if (result.isError()) {
                        broken++;
                        bytes.position(bytes.position() + result.length());
                    }
                } while (result.isError() || result.isOverflow());
                bytes.compact();
            }
        }
        return broken == 0 || broken * 20 < beyondAscii;
    }

    private static int beyondAscii(CharBuffer chars) {
        int count = 0;
        while (chars.hasRemaining()) {
            count += chars.get() > 0x7f ? 1 : 0;
        }
        return count;
    }

    private static boolean starts(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xff) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    /** Characters after the byte order mark; broken sequences read as U+FFFD. */
    Reader open() throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(path));
        in.skipNBytes(markLength);
        CharsetDecoder decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        return new InputStreamReader(in, decoder);
    }

    /** The first characters. */
    String head(int most) throws IOException {
        try (Reader reader = open()) {
            char[] chars = new char[most];
            int length = 0;
            for (int n = reader.read(chars, 0, most); n > 0; n = reader.read(chars, length, most - length)) {
                length += n;
            }
            return new String(chars, 0, length);
        }
    }
}
