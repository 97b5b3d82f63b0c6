package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.demo.DemoShop;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.LotWorth;
import org.salvedge.worth.ModelFile;
import org.salvedge.worth.Question;
import org.salvedge.worth.ShopModel;

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

    private static ShopModel fresh() {
        try (Ledger ledger = ledger()) {
            return ShopModel.fit(ledger.history(AsOf.endOf(DAY), Ledger.Detail.FULL), DAY, SETTINGS);
        }
    }

    private static Path kept(ShopModel model, String key) throws IOException {
        Path file = folder.resolve("kept.fit");
        try (OutputStream out = Files.newOutputStream(file)) {
            ModelFile.write(model, key, out);
        }
        return file;
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

    @Test
    void aKeptFitAnswersAsAFreshOne() throws IOException {
        ShopModel model = fresh();
        Path file = kept(model, "a key");
        LotWorth fresh = model.predict(question());
        LotWorth kept = ModelFile.read(file, "a key").orElseThrow().predict(question());
        assertThat(kept.recovery().sortedDraws())
                .containsExactly(fresh.recovery().sortedDraws());
        assertThat(kept.minutes().sortedDraws()).containsExactly(fresh.minutes().sortedDraws());
        assertThat(kept.lines()).isEqualTo(fresh.lines());
    }

    @Test
    void anotherKeyADamagedFileAndNoFileAreNoFit() throws IOException {
        Path file = kept(fresh(), "a key");
        assertThat(ModelFile.read(file, "another")).isEmpty();
        assertThat(ModelFile.read(folder.resolve("nowhere"), "a key")).isEmpty();
        byte[] bytes = Files.readAllBytes(file);
        byte[] cut = java.util.Arrays.copyOf(bytes, bytes.length / 2);
        Files.write(file, cut);
        assertThat(ModelFile.read(file, "a key")).isEmpty();
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
        assertThat(ModelFile.read(file, "a key")).isEmpty();
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
