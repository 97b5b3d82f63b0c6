package org.salvedge.ledger;

import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.sqlite.SQLiteConfig;
import org.sqlite.util.OSInfo;

/** A process of its own that uses a ledger; prints what comes of it. */
final class Child {
    static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    static final String NOW = "2026-06-30T12:00:00Z";

    private Child() {}

    public static void main(String[] args) throws InterruptedException {
        Path file = Path.of(args[1]);
        try {
            switch (args[0]) {
                case "import" -> importAll(file, Path.of(args[2]), false);
                case "import-and-stall" -> importAll(file, Path.of(args[2]), true);
                case "attempts" -> attempts(file, args[2], Integer.parseInt(args[3]));
                case "read" -> read(file);
                default -> throw new IllegalArgumentException(args[0]);
            }
        } catch (LedgerFailure | Refused e) {
            say(e.getClass().getSimpleName() + ": " + e.getMessage());
        }
    }

    @SuppressWarnings("SystemOut") // the parent reads it
    private static void say(String line) {
        System.out.println(line);
        System.out.flush();
    }

    private static void importAll(Path file, Path folder, boolean stall) {
        try (Ledger ledger = Ledger.open(file, SETTINGS, new TestClock(NOW))) {
            Progress progress = (what, done) -> {
                if (stall && done > 0.5) {
                    say("half way");
                    try {
                        Thread.sleep(600_000);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                }
            };
            say(ledger.importPackage(folder, progress).rows() + " rows");
        }
    }

    private static void attempts(Path file, String unit, int count) {
        try (Ledger ledger = Ledger.open(file, SETTINGS, new TestClock(NOW))) {
            for (int i = 0; i < count; i++) {
                ledger.record(() -> List.of(attempt(
                        ledger.nextAttempt(), unit, "2026-06-01T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, false)));
            }
            say("done");
        }
    }

    private static void read(Path file) {
        try (Ledger ledger = Ledger.openForReading(file, SETTINGS)) {
            say(ledger.history(AsOf.NOW, Detail.FULL).sets() + " sets");
        }
    }

    /**
     * Starts one.
     *
     * @param before goes in front of the command, as in {@code ulimit -f 100; exec}
     */
    static Process start(String before, Path library, Object... args) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        StringBuilder line = new StringBuilder(before)
                .append(" '" + java + "' -Xmx128m -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:-UsePerfData")
                .append(" -Dorg.sqlite.lib.path='" + library.getParent() + "'")
                .append(" -Dorg.sqlite.lib.name='" + library.getFileName() + "'")
                .append(" -cp '" + System.getProperty("java.class.path") + "' org.salvedge.ledger.Child");
        for (Object arg : args) {
            line.append(" '" + arg + "'");
        }
        return new ProcessBuilder("bash", "-c", line.toString())
                .redirectErrorStream(true)
                .start();
    }

    /** Takes SQLite's library out of its jar, so that a process whose files may not grow need not. */
    static Path library(Path folder) throws IOException {
        String name = "libsqlitejdbc.so";
        try (InputStream in = Objects.requireNonNull(SQLiteConfig.class.getResourceAsStream(
                "/org/sqlite/native/" + OSInfo.getNativeLibFolderPathForCurrentOS() + "/" + name))) {
            Files.copy(in, folder.resolve(name));
        }
        return folder.resolve(name);
    }

    static String output(Process process) throws IOException {
        return new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8).strip();
    }
}
