package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.cli.Launched.Result;

/** What happens to the shop when the machine fails: nothing is lost, nothing is half done. */
class FaultsIT {
    private static final int SETS = 40_000;

    private Path shop;

    @BeforeEach
    void shop(@TempDir Path temporary) {
        shop = temporary.resolve("shop");
        TestShop made = new TestShop(shop);
        assertThat(made.run("init", "--zone", "Europe/Berlin")).isZero();
        made.book(TestShop.lot("L0042", "90.00"), TestShop.set("L0042", 1), TestShop.set("L0042", 2));
    }

    private Result run(String... args) {
        return Launched.in(shop).run(args);
    }

    private void everyRuleHolds() {
        Result audit = run("audit");
        assertThat(audit.out()).isEqualTo("Every rule holds.\n");
        assertThat(audit.status()).isZero();
    }

    @ParameterizedTest(name = "after {0} ms")
    @ValueSource(ints = {500, 900, 1300, 1700})
    void anImportThatIsKilledIsThereWholeOrNotAtAll(int delay) throws Exception {
        Path history = history(SETS, 100);
        Launched launched = Launched.in(shop);
        Process importing = launched.start("import", history.toString());
        Thread.sleep(delay);
        importing.destroyForcibly();
        int status = launched.end(importing).status();
        everyRuleHolds();
        assertThat(run("show", "L0042").status()).isZero();
        boolean there = run("show", "H0001").status() == Status.DONE;
        assertThat(there || status != Status.DONE)
                .as("what was said to be done is there")
                .isTrue();
        if (there) {
            assertThat(run("show", "H0400-100").status()).isZero();
        } else {
            Result again = run("import", history.toString());
            assertThat(again.out()).as(again.err()).contains("40 000 sets");
            everyRuleHolds();
        }
    }

    @Test
    void twoWhoRecordAtOnceBothGetThrough() {
        List<Process> processes = new ArrayList<>();
        Launched launched = Launched.in(shop);
        for (int i = 0; i < 8; i++) {
            processes.add(launched.start("attempt", "00" + (i % 2 + 1), "--fault", "backlight", "--fix", "none"));
        }
        TreeSet<String> entries = new TreeSet<>();
        for (Process process : processes) {
            Result result = launched.end(process);
            assertThat(result.status()).as(result.err()).isZero();
            entries.add(result.out().replaceAll(":.*\n", ""));
        }
        assertThat(entries).hasSize(8);
        everyRuleHolds();
    }

    /** A limit on the size of files stands for the full disk: it binds every user. */
    @Test
    void aFullDiskIsSaidAndChangesNothing() throws IOException {
        Path history = history(SETS, 100);
        Result result = Launched.in(shop)
                .under("sh", "-c", "ulimit -f 3000; exec \"$@\"", "sh")
                .run("import", history.toString());
        assertThat(result.status()).as(result.err()).isEqualTo(Status.UNREADABLE);
        assertThat(result.err()).startsWith("salvedge: the ledger ").contains("shop.db");
        assertThat(result.out()).isEmpty();
        everyRuleHolds();
        assertThat(run("show", "H0001").status()).isEqualTo(Status.REFUSED);
        assertThat(run("lost", "001").status()).isZero();
    }

    @Test
    void aReportThatFindsNoRoomLeavesNoneBehind() throws IOException {
        assertThat(run("import", history(3_000, 5).toString()).status()).isZero();
        Result result = Launched.in(shop)
                .under("sh", "-c", "ulimit -f 70; exec \"$@\"", "sh")
                .run("month", "2025-01");
        assertThat(result.status()).as(result.err()).isEqualTo(Status.UNREADABLE);
        assertThat(result.err()).contains("month-2025-01.xlsx could not be written");
        try (Stream<Path> reports = Files.list(shop.resolve("reports"))) {
            assertThat(reports).isEmpty();
        }
    }

    @Test
    void aShopThatMayNotBeWrittenCanBeRead() throws IOException {
        Launched other = asOneWhoMayOnlyRead();
        Result shown = other.run("show", "L0042");
        assertThat(shown.err()).isEmpty();
        assertThat(shown.out()).contains("2 sets");
        assertThat(other.run("yield", "--format", "json").out()).startsWith("{\"rows\":");
        assertThat(other.run("audit").status()).isZero();
        Result lost = other.run("lost", "001");
        assertThat(lost.status()).as(lost.err()).isEqualTo(Status.UNREADABLE);
        assertThat(lost.err()).startsWith("salvedge: the ledger ").contains("cannot be written");
        Result month = other.run("month", "2026-03");
        assertThat(month.status()).isEqualTo(Status.UNREADABLE);
        assertThat(month.err()).contains("could not be written");
        Result made = other.run("--shop", "new", "init");
        assertThat(made.status()).as(made.err()).isEqualTo(Status.UNREADABLE);
        everyRuleHolds();
    }

    /** Someone without rights in the shop's folder: the tester, or nobody where the tester is root. */
    private Launched asOneWhoMayOnlyRead() throws IOException {
        try (Stream<Path> all = Files.walk(shop)) {
            for (Path path : all.toList()) {
                Files.setPosixFilePermissions(
                        path, PosixFilePermissions.fromString(Files.isDirectory(path) ? "r-xr-xr-x" : "r--r--r--"));
            }
        }
        Launched launched = Launched.in(shop).with("HOME", "/nonexistent");
        if (!"root".equals(System.getProperty("user.name"))) {
            return launched;
        }
        Files.setPosixFilePermissions(shop.getParent(), PosixFilePermissions.fromString("rwxr-xr-x"));
        Path setpriv = Path.of("/usr/bin/setpriv");
        assumeTrue(Files.isExecutable(setpriv), "root may write everywhere, and setpriv is not there to step down");
        launched.under(setpriv.toString(), "--reuid=65534", "--regid=65534", "--clear-groups");
        assumeTrue(launched.run("--version").status() == 0, "this folder cannot be read by others");
        return launched;
    }

    /** A plain history package: every set with one attempt and its sale. */
    private Path history(int sets, int perLot) throws IOException {
        Path folder = Files.createDirectories(shop.resolveSibling("history"));
        StringBuilder lots = new StringBuilder("lot,supplier,bought_on,currency,price\n");
        StringBuilder units = new StringBuilder("unit,lot,maker,model,family,claimed,arrived\n");
        StringBuilder attempts = new StringBuilder("attempt,unit,started_at,fault,fix,fix_minutes,passed\n");
        StringBuilder exits = new StringBuilder("unit,on,exit,gross\n");
        for (int i = 0; i < sets; i++) {
            String lot = String.format(Locale.ROOT, "H%04d", i / perLot + 1);
            String unit = lot + "-" + (i % perLot + 1);
            if (i % perLot == 0) {
                lots.append(lot).append(",Northquay,2025-01-02,EUR,500.00\n");
            }
            units.append(unit).append(',').append(lot).append(",Kestrel,KX-55A,KX-55,untested,true\n");
            attempts.append(i + 1)
                    .append(',')
                    .append(unit)
                    .append(",2025-01-03T10:00:00,backlight,led_strips,40,true\n");
            exits.append(unit).append(",2025-01-05,sold,90.00\n");
        }
        Files.writeString(folder.resolve("lots.csv"), lots);
        Files.writeString(folder.resolve("units.csv"), units);
        Files.writeString(folder.resolve("attempts.csv"), attempts);
        Files.writeString(folder.resolve("exits.csv"), exits);
        Files.writeString(folder.resolve("comebacks.csv"), "unit,on,restocked\n");
        Files.writeString(folder.resolve("datapackage.json"), """
                {"name":"history","resources":[{"name":"lots","path":"lots.csv"},{"name":"units","path":"units.csv"},
                {"name":"attempts","path":"attempts.csv"},{"name":"exits","path":"exits.csv"},{"name":"comebacks","path":"comebacks.csv"}]}
                """);
        return folder;
    }
}
