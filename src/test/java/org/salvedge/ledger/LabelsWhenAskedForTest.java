package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fact;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;

class LabelsWhenAskedForTest {
    private static final int SETS = LabelBlock.SIZE + 50;
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-01T12:00:00Z"), ZoneOffset.UTC);

    @Test
    void eachSetHasTheLabelItWasReceivedUnder(@TempDir Path folder) {
        try (Ledger ledger = Ledger.create(folder.resolve("shop.db"), Settings.defaults(EUR, ZoneOffset.UTC), CLOCK)) {
            List<Fact> facts = new ArrayList<>();
            facts.add(lot("L1", "2026-03-01", "100.00"));
            IntStream.range(0, SETS).forEach(i -> facts.add(set(label(i), "L1").build()));
            ledger.record(facts);

            History full = ledger.history(AsOf.NOW, Detail.FULL);
            History review = ledger.history(AsOf.NOW, Detail.REVIEW);

            assertThat(labels(review)).containsExactlyElementsOf(labels(full)).hasSize(SETS);
            assertThat(review.label(SETS - 1)).isEqualTo(label(SETS - 1));
        }
    }

    @Test
    void aBlockWithGapsIsReadOneByOne(@TempDir Path folder) throws java.sql.SQLException {
        try (java.sql.Connection c = java.sql.DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("any.db"));
                java.sql.Statement sql = c.createStatement()) {
            sql.execute("CREATE TABLE unit_label (id INTEGER PRIMARY KEY, text TEXT NOT NULL)");
            sql.execute("INSERT INTO unit_label VALUES (1, 'a'), (2, 'b'), (4, 'd')");
            String[] labels = new String[LabelBlock.SIZE];
            LabelBlock.read(c, 0, labels, 0);
            assertThat(labels).startsWith(null, "a", "b", null, "d");
            sql.execute("UPDATE unit_label SET id = 3, text = 'c' || char(10) WHERE id = 4");
            LabelBlock.read(c, 0, labels, 0);
            assertThat(labels).startsWith(null, "a", "b", "c\n");
        }
    }

    private static List<String> labels(History history) {
        return IntStream.range(0, history.sets()).mapToObj(history::label).toList();
    }

    private static String label(int i) {
        return String.format(Locale.ROOT, "L1-%05d", i);
    }
}
