package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Histories;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Refused;

/** Full disks, killed processes, other processes: what was there stays, what is new is there whole or not at all. */
class FaultsTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void aShop() {
        file = folder.resolve("shop.db");
        try (Ledger ledger = create(file)) {
            ledger.record(List.of(
                    lot("OLD", "2026-03-01", "100.00"),
                    set("A", "OLD").build(),
                    set("B", "OLD").build()));
        }
    }

    private static Ledger create(Path file) {
        return Ledger.create(file, Child.SETTINGS, new TestClock(Child.NOW));
    }

    private Ledger open() {
        return Ledger.open(file, Child.SETTINGS, new TestClock(Child.NOW));
    }

    private Path packageOf(int lots) {
        Path in = folder.resolve("package" + lots);
        try (Ledger source = create(folder.resolve("source" + lots + ".db"))) {
            source.record(Histories.random(7, lots));
            source.exportPackage(in, Progress.NONE);
        }
        return in;
    }

    private void onlyTheOldIsThere() {
        try (Ledger ledger = open()) {
            assertThat(ledger.all(Lot.class)).extracting(l -> l.lot().value()).containsExactly("OLD");
            assertThat(ledger.latest().orElseThrow().number()).isEqualTo(3);
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    private interface Writing {
        void on(Ledger ledger);
    }

    /** Lets the file grow by no page, by some, by some more, until the writing succeeds; how often it failed. */
    private int failUntilThereIsRoom(int step, Writing writing) throws SQLException {
        int failures = 0;
        for (int room = 0; ; room += step) {
            Database database = Database.forWriting(file, false);
            int more = room;
            database.plain(c -> {
                long pages = Database.number(c, "PRAGMA page_count", 0);
                Database.execute(c, "PRAGMA max_page_count = " + (pages + more));
                return true;
            });
            try (Ledger ledger = Ledger.on(database, Child.SETTINGS, new TestClock(Child.NOW))) {
                writing.on(ledger);
                return failures;
            } catch (LedgerFailure e) {
                assertThat(e).hasMessageContaining("the disk is full; make room and try again");
                failures++;
            }
            onlyTheOldIsThere();
        }
    }

    @Test
    void whereverTheDiskFillsUpARecordingIsWholeOrAbsent() throws SQLException {
        List<Fact> facts = Histories.random(3, 40);

        int failures = failUntilThereIsRoom(1, ledger -> ledger.record(facts));

        assertThat(failures).isGreaterThan(5);
        try (Ledger ledger = open()) {
            assertThat(ledger.latest().orElseThrow().number()).isEqualTo(3 + facts.size());
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void whereverTheDiskFillsUpAnImportIsWholeOrAbsent() throws SQLException {
        Path in = packageOf(120);

        int failures = failUntilThereIsRoom(4, ledger -> ledger.importPackage(in, Progress.NONE));

        assertThat(failures).isGreaterThan(5);
        try (Ledger ledger = open()) {
            assertThat(ledger.all(Lot.class)).hasSize(121);
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void aFileThatMayNotGrowIsAFailureInWords() throws IOException {
        Path in = packageOf(100);

        long kib = Files.size(file) / 1024 + 24;
        String said =
                Child.output(Child.start("ulimit -f " + kib + "; exec", Child.library(folder), "import", file, in));

        assertThat(said).startsWith("LedgerFailure: the ledger ").contains("the disk");
        onlyTheOldIsThere();
    }

    @Test
    void anImportKilledHalfWayLeavesNothing() throws IOException, InterruptedException {
        Path in = packageOf(300);
        Process child = Child.start("exec", Child.library(folder), "import-and-stall", file, in);
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(lines.readLine()).isEqualTo("half way");
        } finally {
            child.destroyForcibly().waitFor();
        }
        assertThat(file.resolveSibling("shop.db-wal")).exists();

        onlyTheOldIsThere();
        try (Ledger ledger = open()) {
            ledger.importPackage(in, Progress.NONE);
            assertThat(ledger.all(Lot.class)).hasSize(301);
        }
    }

    @Test
    void twoProcessesThatWriteAtOnceWaitForEachOther() throws IOException {
        Path library = Child.library(folder);
        List<Process> children = new ArrayList<>();
        for (String unit : List.of("A", "B")) {
            children.add(Child.start("exec", library, "attempts", file, unit, 40));
        }
        for (Process child : children) {
            assertThat(Child.output(child)).isEqualTo("done");
        }
        try (Ledger ledger = open()) {
            assertThat(ledger.all(Attempt.class))
                    .extracting(Attempt::number)
                    .hasSize(80)
                    .doesNotHaveDuplicates();
            assertThat(ledger.entriesOf(unit("A"))).hasSize(41);
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    private String readIn(Path place) throws IOException {
        // Root may write anywhere unless it gives that up.
        boolean root = "root".equals(System.getProperty("user.name"));
        String before = root ? "exec setpriv --inh-caps=-all --bounding-set=-all" : "exec";
        assertThat(place.toFile().setWritable(false)).isTrue();
        try {
            return Child.output(Child.start(before, Child.library(folder), "read", place.resolve("shop.db")));
        } finally {
            assertThat(place.toFile().setWritable(true)).isTrue();
        }
    }

    @Test
    void aFolderThatCannotBeWrittenIsRead() throws IOException {
        Path place = Files.createDirectory(folder.resolve("read-only"));
        Files.copy(file, place.resolve("shop.db"));

        assertThat(readIn(place)).isEqualTo("2 sets");
        assertThat(place).isDirectoryContaining(p -> p.endsWith("shop.db"));
        try (var inside = Files.list(place)) {
            assertThat(inside).hasSize(1);
        }
    }

    @Test
    void aFolderThatCannotBeWrittenIsReadWithTheLogThatWasLeftInIt() throws IOException {
        Path place = Files.createDirectory(folder.resolve("read-only"));
        try (Ledger ledger = open()) {
            ledger.record(List.of(set("C", "OLD").build())); // now in the log only, which closing would empty
            Files.copy(file, place.resolve("shop.db"));
            Files.copy(folder.resolve("shop.db-wal"), place.resolve("shop.db-wal"));
        }

        assertThat(readIn(place)).isEqualTo("3 sets");
    }

    @Test
    void aLedgerOfANewerVersionIsRefused() throws SQLException {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            Database.execute(c, "PRAGMA user_version = 99");
        }
        assertThatThrownBy(this::open)
                .isInstanceOf(Refused.class)
                .hasMessageContaining("was written by a newer version of this program");
        assertThatThrownBy(() -> Ledger.openForReading(file, Child.SETTINGS)).isInstanceOf(Refused.class);
    }

    @Test
    void aFileThatIsNoLedgerIsRefused() throws IOException, SQLException {
        Path text = Files.writeString(
                folder.resolve("notes.db"), "not a database at all, but long enough to look at".repeat(20));
        assertThatThrownBy(() -> Ledger.openForReading(text, Child.SETTINGS))
                .isInstanceOf(LedgerFailure.class)
                .hasMessageContaining("is not a ledger");
        Path empty = Files.createFile(folder.resolve("empty.db"));
        Path other = folder.resolve("other.db");
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + other)) {
            Database.execute(c, "CREATE TABLE a (b)");
        }
        for (Path no : List.of(empty, other)) {
            long size = Files.size(no);
            assertThatThrownBy(() -> Ledger.open(no, Child.SETTINGS, new TestClock(Child.NOW)))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("is not a ledger");
            assertThat(Files.size(no)).isEqualTo(size);
        }
        assertThatThrownBy(() -> Ledger.open(folder.resolve("none.db"), Child.SETTINGS, new TestClock(Child.NOW)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no shop here: salvedge init");
        assertThat(folder.resolve("none.db")).doesNotExist();
    }

    @Test
    void aLedgerIsMadeOnceAndOnlyWhole() {
        assertThatThrownBy(() -> create(file)).isInstanceOf(Refused.class).hasMessageContaining("already");
        Path nowhere = folder.resolve("no/such/folder/shop.db");
        assertThatThrownBy(() -> create(nowhere)).isInstanceOf(LedgerFailure.class);
    }
}
