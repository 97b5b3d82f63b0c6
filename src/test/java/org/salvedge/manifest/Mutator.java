package org.salvedge.manifest;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Damages a file as chance and malice do: bytes turned, blocks cut, doubled and moved, words of the formats put in; in packed files the parts too. */
final class Mutator {
    private static final int LARGEST_PART = 4 << 20;
    private static final List<String> WORDS = List.of(
            "<row r=\"1048577\">",
            "<row r=\"-1\">",
            "<c r=\"XFD1048576\" t=\"s\"><v>999999999</v></c>",
            "<c t=\"s\"><v>-1</v></c>",
            "<c r=\"A1\" t=\"inlineStr\"><is><t>=1+1</t></is></c>",
            "<c r=\"B2\" s=\"99999\"><v>1e309</v></c>",
            "<mergeCell ref=\"A1:XFD1048576\"/>",
            "<f>HYPERLINK(\"x\")</f>",
            "<sheetData>",
            "</sheetData>",
            "<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/hosts\">]>",
            "&b;",
            "<![CDATA[",
            "]]>",
            "<!--",
            "<a>".repeat(300),
            "<table><tr>".repeat(100),
            "<td colspan=\"99999999\" rowspan=\"99999999\">",
            "table:number-columns-repeated=\"2147483647\"",
            "table:number-rows-repeated=\"2147483647\"",
            "ss:Index=\"2147483647\"",
            "1.23457E+14",
            "NaN",
            "99999999999999999999999999",
            "1,234,567.89",
            "\"",
            "\"\"",
            ";",
            "\t",
            ",",
            "\r",
            "\n",
            "\u0000",
            "\u001b[31m",
            "\u202e",
            "\ufeff",
            "sep=;\n",
            "=cmd()",
            "Model;Maker;Size\n",
            "Qty,100000000\n",
            "#REF!",
            "_x0000_",
            "x".repeat(40_000));

    private final SplittableRandom random;

    Mutator(long seed) {
        random = new SplittableRandom(seed);
    }

    byte[] damage(byte[] file) throws IOException {
        boolean packed = file.length > 4 && file[0] == 'P' && file[1] == 'K';
        if (packed && random.nextInt(4) > 0) {
            return repack(file);
        }
        byte[] out = file;
        for (int i = 1 + random.nextInt(4); i > 0; i--) {
            out = once(out);
        }
        return out;
    }

    private byte[] once(byte[] from) {
        int at = from.length == 0 ? 0 : random.nextInt(from.length);
        int length = Math.min(from.length - at, 1 + random.nextInt(1 << random.nextInt(1, 13)));
        return switch (random.nextInt(9)) {
            case 0, 1 -> turned(from);
            case 2 -> Arrays.copyOf(from, at);
            case 3 -> join(from, at, new byte[0], at + length);
            case 4 -> join(from, at, Arrays.copyOfRange(from, at, at + length), at);
            case 5 -> {
                int to = from.length == 0 ? 0 : random.nextInt(from.length);
                yield join(from, to, Arrays.copyOfRange(from, at, at + length), to);
            }
            case 6 -> {
                byte[] noise = new byte[length];
                random.nextBytes(noise);
                yield join(from, at, noise, at + length);
            }
            case 7 -> number(from);
            default -> join(from, at, word(), random.nextBoolean() ? at : at + Math.min(length, 20));
        };
    }

    private byte[] word() {
        byte[] word = WORDS.get(random.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(8) > 0) {
            return word;
        }
        ByteArrayOutputStream many = new ByteArrayOutputStream();
        for (int i = random.nextInt(1, 2_000); i > 0; i--) {
            many.writeBytes(word);
            if (many.size() > LARGEST_PART) {
                break;
            }
        }
        return many.toByteArray();
    }

    private byte[] turned(byte[] from) {
        byte[] out = from.clone();
        for (int i = random.nextInt(1, 12); i > 0 && out.length > 0; i--) {
            out[random.nextInt(out.length)] = (byte) random.nextInt(256);
        }
        return out;
    }

    /** Another number in place of one that stands there. */
    private byte[] number(byte[] from) {
        int at = from.length == 0 ? 0 : random.nextInt(from.length);
        while (at < from.length && (from[at] < '0' || from[at] > '9')) {
            at++;
        }
        int end = at;
        while (end < from.length && from[end] >= '0' && from[end] <= '9') {
            end++;
        }
        String[] numbers = {"0", "-1", "65536", "1048576", "2147483647", "4294967296", "1e999", "0.000001", ""};
        return join(from, at, numbers[random.nextInt(numbers.length)].getBytes(StandardCharsets.US_ASCII), end);
    }

    private static byte[] join(byte[] from, int end, byte[] between, int start) {
        byte[] out = Arrays.copyOf(from, end + between.length + Math.max(0, from.length - start));
        System.arraycopy(between, 0, out, end, between.length);
        System.arraycopy(
                from, Math.min(start, from.length), out, end + between.length, Math.max(0, from.length - start));
        return out;
    }

    /** Damages some parts, or their names, and packs them again with sums that fit. */
    private byte[] repack(byte[] file) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
                parts.put(e.getName(), in.readNBytes(LARGEST_PART));
            }
        } catch (IOException | IllegalArgumentException e) {
            return once(file);
        }
        if (parts.isEmpty()) {
            return once(file);
        }
        List<String> names = new ArrayList<>(parts.keySet());
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            String name = names.get(random.nextInt(names.size()));
            byte[] part = parts.getOrDefault(name, new byte[0]);
            switch (random.nextInt(12)) {
                case 0 -> parts.remove(name);
                case 1 -> parts.put(names.get(random.nextInt(names.size())), part);
                default -> parts.put(name, once(part));
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(1);
            for (Map.Entry<String, byte[]> e : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(e.getKey()));
                zip.write(e.getValue());
            }
        }
        return out.toByteArray();
    }
}
