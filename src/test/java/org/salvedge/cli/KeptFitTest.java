package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.demo.DemoShop;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Claim;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.Looking;
import org.salvedge.worth.ModelFile;
import org.salvedge.worth.Question;
import org.salvedge.worth.ShopModel;
import org.salvedge.worth.Terms;
import org.salvedge.worth.turn.StopModel;
import org.salvedge.worth.turn.StopTable;

/** A fit that was kept against a fresh one. */
class KeptFitTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 13);
    private static final Settings SETTINGS = Settings.defaults(TestShop.EUR, TestShop.BERLIN);

    @TempDir
    static Path folder;

    private static TestShop shop = new TestShop(Path.of(""));

    @BeforeAll
    static void open() {
        shop = ImportedShop.of(DemoShop.history(1), folder);
    }

    private static Ledger ledger() {
        return Ledger.openForReading(shop.folder().resolve("shop.db"), SETTINGS);
    }

    private static KeptFit.Fit fresh() {
        try (Ledger ledger = ledger()) {
            History history = ledger.history(AsOf.endOf(DAY), Ledger.Detail.FULL);
            return new KeptFit.Fit(
                    ShopModel.fit(history, DAY, SETTINGS), StopModel.fit(history, DAY, SETTINGS.labourRate()));
        }
    }

    private static KeptFit.Answers keeping() {
        try (Ledger ledger = ledger()) {
            return KeptFit.of(DAY, ledger, shop.session(), SETTINGS, 1);
        }
    }

    private static Path kept(KeptFit.Fit fit, String key) throws IOException {
        Path file = folder.resolve("kept.fit");
        try (OutputStream out = Files.newOutputStream(file)) {
            ModelFile.write(fit, key, out);
        }
        return file;
    }

    private static Optional<KeptFit.Fit> read(Path file, String key) {
        return ModelFile.read(file, key, KeptFit.Fit.class);
    }

    private static Question question() {
        List<Candidate> sets = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            String model = i % 3 == 0 ? "KX-55A" : i % 3 == 1 ? "43U-7" : "ZZ-NEW";
            sets.add(new Candidate(
                    "S",
                    i + 2,
                    i % 3 == 0 ? "Kestrel" : null,
                    model,
                    55.0,
                    i % 2 == 0 ? Claim.DEAD : Claim.UNTESTED,
                    null));
        }
        return new Question(sets, "Northquay", DAY.plusDays(1), 3000, 5);
    }

    private static void assertSame(KeptFit.Fit kept, KeptFit.Fit fresh) {
        Appraisal a = appraisal(kept.model());
        Appraisal b = appraisal(fresh.model());
        assertThat(a.worth().recovery().sortedDraws())
                .containsExactly(b.worth().recovery().sortedDraws());
        assertThat(a.worth().minutes().sortedDraws())
                .containsExactly(b.worth().minutes().sortedDraws());
        assertThat(a.worth())
                .usingRecursiveComparison()
                .ignoringFields("recovery", "minutes")
                .isEqualTo(b.worth());
        assertThat(a.grounds()).isEqualTo(b.grounds());
        assertThat(Looking.at(kept.model(), question(), 2))
                .usingRecursiveComparison()
                .isEqualTo(Looking.at(fresh.model(), question(), 2));
        StopTable stops = StopTable.of(kept.stops(), a.worth());
        assertThat(stops).isEqualTo(StopTable.of(fresh.stops(), b.worth()));
        assertThat(stops.rows()).isNotEmpty();
        assertThat(kept.model().supplierAsKnown("northQUAY")).isEqualTo("Northquay");
    }

    private static Appraisal appraisal(ShopModel model) {
        return Appraisal.of(model, question(), Terms.none(TestShop.EUR), 0.8, 0, null);
    }

    @Test
    void aKeptFitAnswersAsAFreshOne() throws IOException {
        KeptFit.Fit fit = fresh();
        assertSame(read(kept(fit, "a key"), "a key").orElseThrow(), fit);
    }

    @Test
    void aFitIsKeptOnceAndMadeAnewWhereTheFileIsDamagedOrOfAnotherProgram() throws IOException {
        Path file = shop.folder().resolve(KeptFit.NAME);
        assertThat(file).doesNotExist();
        KeptFit.Answers first = keeping();
        byte[] bytes = Files.readAllBytes(file);
        KeptFit.Answers again = keeping();
        assertThat(again.stops().get()).isNotSameAs(first.stops().get());
        assertSame(
                new KeptFit.Fit(again.model(), again.stops().get()),
                new KeptFit.Fit(first.model(), first.stops().get()));
        assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
        byte[] damaged = bytes.clone();
        damaged[bytes.length / 2] ^= 1;
        Files.write(file, damaged);
        keeping();
        assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
        try (OutputStream out = Files.newOutputStream(file);
                Ledger ledger = ledger()) {
            ModelFile.write(first.model(), KeptFit.key(DAY, ledger, shop.session(), SETTINGS), out);
        }
        keeping();
        assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
        Files.delete(file);
    }

    @Test
    void aKeptFitDoesNotGrowWithTheSets() throws IOException {
        long small = Files.size(kept(fit(20), "a key"));
        long large = Files.size(kept(fit(200), "a key"));
        assertThat(large - small).isLessThan(10 * 180);
    }

    /** Of ten lots of so many sets, all of three models. */
    private static KeptFit.Fit fit(int setsALot) {
        HistoryBuilder b = History.builder(TestShop.EUR);
        int first = (int) DAY.toEpochDay() - 200;
        int supplier = b.suppliers().number("Northquay");
        int fault = b.faults().number("power_board");
        int fix = b.fixes().number("power_board_repair");
        for (int lot = 0; lot < 10; lot++) {
            b.lot("L" + lot, supplier, first + lot, first + lot, 100_000, -1);
            for (int i = 0; i < setsALot; i++) {
                int id = lot * setsALot + i;
                String name = "KX-" + i % 3;
                int model = b.models().number(name);
                int flags = History.ARRIVED | History.ON_MANIFEST;
                int claim = b.claims().number(Claim.DEAD.code());
                b.set(
                        id,
                        lot,
                        b.families().number(name),
                        b.makers().number("Kestrel"),
                        model,
                        claim,
                        50_000_000,
                        -1,
                        -1,
                        -1,
                        flags,
                        -1,
                        -1);
                int passed = i % 4 == 0 ? 0 : 1;
                b.attempt(id, first + 20, 0, id + 1, fault, fix, -1, passed, -1, 5_000_000, 20_000_000, 900);
                int kind = (passed == 1 ? ExitKind.SOLD : ExitKind.STRIPPED).ordinal();
                b.exit(id, first + 30 + i % 9, 1, kind, 1, 9_000 + 100 * (i % 7), 900, 5_000_000, -1, -1);
            }
        }
        History history = b.build();
        return new KeptFit.Fit(
                ShopModel.fit(history, DAY, SETTINGS), StopModel.fit(history, DAY, SETTINGS.labourRate()));
    }

    @Test
    void anotherKeyADamagedFileAndNoFileAreNoFit() throws IOException {
        Path file = kept(fresh(), "a key");
        assertThat(read(file, "another")).isEmpty();
        assertThat(read(folder.resolve("nowhere"), "a key")).isEmpty();
        byte[] bytes = Files.readAllBytes(file);
        byte[] cut = java.util.Arrays.copyOf(bytes, bytes.length / 2);
        Files.write(file, cut);
        assertThat(read(file, "a key")).isEmpty();
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
        assertThat(read(file, "a key")).isEmpty();
    }

    @Test
    void whatWasRecordedByTheDayChangesTheStateAndWhatCameLaterDoesNot() {
        String before;
        try (Ledger ledger = ledger()) {
            before = ledger.state(AsOf.endOf(DAY));
            assertThat(ledger.state(AsOf.endOf(DAY.minusDays(1)))).isNotEqualTo(before);
        }
        assertThat(shop.run("place", "L0056-001", "bay")).as(shop.err()).isZero();
        try (Ledger ledger = ledger()) {
            assertThat(ledger.state(AsOf.endOf(DAY))).isEqualTo(before);
            assertThat(ledger.state(AsOf.endOf(DAY.plusDays(1)))).isNotEqualTo(before);
        }
    }
}
