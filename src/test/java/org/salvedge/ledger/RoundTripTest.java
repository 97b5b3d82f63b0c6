package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Histories;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;

/** What goes into a ledger comes out of it, by its own reading and by way of a package. */
class RoundTripTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-30T12:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path folder;

    private Ledger shop(String name, Settings settings) {
        return Ledger.create(folder.resolve(name + ".db"), settings, CLOCK);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void everyFactComesBackAsItWasRecorded(long seed) {
        List<Fact> facts = Histories.random(seed, (int) seed);
        try (Ledger ledger = shop("a", Settings.defaults(Currency.getInstance("EUR"), ZoneOffset.UTC))) {
            List<Long> numbers = ledger.record(facts);

            for (int i = 0; i < facts.size(); i++) {
                Fact recorded = facts.get(i);
                assertThat(ledger.entry(numbers.get(i)))
                        .map(Entry::fact)
                        .hasValueSatisfying(
                                kept -> assertThat(withoutFilledIn(kept)).isEqualTo(withoutFilledIn(recorded)));
            }
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    private static Fact withoutFilledIn(Fact fact) {
        if (fact instanceof TvSet set) {
            return set.toBuilder().landedCost(null).build();
        }
        return fact instanceof Lot lot ? plain(lot) : fact;
    }

    private static Fact plain(Lot l) {
        return new Lot(
                l.lot(),
                l.supplier(),
                l.boughtOn(),
                l.currency(),
                l.rate(),
                l.price(),
                l.premium(),
                l.freight(),
                l.otherCost(),
                l.minutes(),
                l.arrivalDay(),
                null,
                l.note());
    }

    @ParameterizedTest(name = "seed {0}, {1}")
    @org.junit.jupiter.params.provider.CsvSource({
        "1,EUR", "2,EUR", "3,EUR", "4,JPY", "5,KWD", "6,USD", "7,EUR", "40,EUR", "60,EUR"
    })
    void exportThenImportThenExportIsTheSameToTheByte(long seed, String currency) throws IOException {
        Settings settings = Settings.defaults(Currency.getInstance(currency), ZoneOffset.UTC);
        Path first = folder.resolve("first");
        Path second = folder.resolve("second");
        try (Ledger one = shop("one", settings);
                Ledger two = shop("two", settings)) {
            one.record(Histories.random(seed, (int) seed, settings.currency()));
            one.exportPackage(first, Progress.NONE);
            two.importPackage(first, Progress.NONE);
            two.exportPackage(second, Progress.NONE);

            for (Table<?> table : Tables.ALL) {
                assertThat(two.all(table.kind())).isEqualTo(one.all(table.kind()));
            }
            assertThat(two.audit(Progress.NONE)).isEmpty();
        }
        assertThat(names(second)).isEqualTo(names(first));
        for (String file : names(first)) {
            assertThat(second.resolve(file)).hasSameBinaryContentAs(first.resolve(file));
        }
    }

    private static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).collect(Collectors.toSet());
        }
    }
}
