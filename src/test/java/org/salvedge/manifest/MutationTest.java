package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/**
 * Damaged files are read or refused, in bounded time and memory, never anything else. The long run takes {@code fuzz.minutes}
 * (20 in the profile {@code fuzz}, with a heap of 1 GB) or {@code fuzz.files} files, whichever ends first, and begins at
 * {@code fuzz.seed}; a file that fails is kept in target/fuzz.
 */
class MutationTest {
    private static final Path RESOURCES = Path.of("src", "test", "resources");
    private static final long LONGEST_NANOS = 20_000_000_000L;
    private static final int SMOKE = 600;

    private final ManifestReader reader =
            new ManifestReader(Settings.defaults(Currency.getInstance("EUR"), ZoneOffset.UTC));

    @TempDir
    Path folder;

    static Stream<Path> findings() throws IOException {
        Path findings = RESOURCES.resolve("findings");
        return Files.isDirectory(findings) ? files(findings).stream() : Stream.of();
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("findings")
    void whatOnceFailedIsReadOrRefused(Path file) throws IOException {
        assertThat(failure(Files.readAllBytes(file), file.getFileName().toString()))
                .isNull();
    }

    @Test
    void damagedFilesAreReadOrRefused() throws IOException {
        List<Path> seeds = seeds();
        assertThat(seeds).hasSizeGreaterThan(80);
        for (int i = 0; i < SMOKE; i++) {
            check(seeds, i);
        }
    }

    @Test
    @Tag("fuzz")
    void damagedFilesOfManySeedsAreReadOrRefused() throws IOException {
        List<Path> seeds = seeds();
        double minutes = Double.parseDouble(System.getProperty("fuzz.minutes", "20"));
        long first = Long.getLong("fuzz.seed", 1_000_000);
        long end = System.nanoTime() + (long) (minutes * 60e9);
        long count = 0;
        long slowest = 0;
        long most = Long.getLong("fuzz.files", Long.MAX_VALUE);
        while (count < most && System.nanoTime() < end) {
            long start = System.nanoTime();
            check(seeds, first + count);
            slowest = Math.max(slowest, System.nanoTime() - start);
            count++;
        }
        System.out.println(
                count + " damaged files from seed " + first + ", the slowest " + slowest / 1_000_000 + " ms");
        assertThat(count).isPositive();
    }

    private void check(List<Path> seeds, long seed) throws IOException {
        Path from = seeds.get((int) (seed % seeds.size()));
        byte[] damaged = new Mutator(seed).damage(Files.readAllBytes(from));
        Throwable failure = failure(damaged, from.getFileName().toString());
        if (failure != null) {
            Path kept = Files.createDirectories(Path.of("target", "fuzz")).resolve(seed + "-" + from.getFileName());
            Files.write(kept, damaged);
            throw new AssertionError("seed " + seed + ", kept as " + kept, failure);
        }
    }

    /** What went wrong, or null. */
    private @Nullable Throwable failure(byte[] bytes, String name) throws IOException {
        Path file = Files.write(folder.resolve(name), bytes);
        long start = System.nanoTime();
        try {
            Manifest manifest = reader.read(file, null);
            assertThat(manifest.sets().size() + manifest.problems().size()).isPositive();
            manifest.problems().forEach(p -> assertThat(p.toString()).doesNotContain("\u001b", "\u0000"));
        } catch (Refused e) {
            assertThat(e.getMessage()).startsWith(name);
        } catch (RuntimeException | Error e) {
            return e;
        }
        return System.nanoTime() - start > LONGEST_NANOS ? new AssertionError("took more than 20 s") : null;
    }

    private static List<Path> seeds() throws IOException {
        List<Path> seeds = new ArrayList<>();
        for (String folder : List.of("manifests", "corpus/tuning", "corpus/heldout")) {
            for (Path file : files(RESOURCES.resolve(folder))) {
                if (!file.toString().endsWith(".json") && !file.toString().contains("swelling")) {
                    seeds.add(file);
                }
            }
        }
        return seeds;
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }
}
