package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A label that went on record when it was still taken: it is read, and no terminal obeys it. */
class OddLabelTest {
    @Test
    void aQuestionHoldsNothingThatATerminalObeys(@TempDir Path folder) throws SQLException {
        TestShop shop = TestShop.withLot(folder);
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("shop.db"));
                Statement s = c.createStatement()) {
            s.execute("DROP TRIGGER unit_label_no_update");
            s.execute("UPDATE unit_label SET text = 'L0042-\u202e002' WHERE text = 'L0042-002'");
        }

        shop.answering("n", "n", "").run("sell", "L0042-\u202e002", "--gross", "120");

        assertThat(shop.questions()).isNotEmpty().allMatch(q -> q.codePoints().noneMatch(c -> c == 0x202e));
        assertThat(shop.questions().get(0)).startsWith("L0042-\ufffd002: was it tested");
        assertThat(shop.out() + shop.err()).doesNotContain("\u202e");
    }
}
