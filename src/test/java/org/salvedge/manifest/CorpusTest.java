package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings of whole files. The held-out group was made before the reader was, and is never used to mend it. */
class CorpusTest {
    private static final Path RESOURCES = Path.of("src", "test", "resources");

    @Test
    void everyExampleReadsAsACarefulPersonWould() throws Exception {
        ManifestJudge.Score score = ManifestJudge.over(RESOURCES.resolve("manifests"));
        assertThat(score.counts).isNotEmpty();
        assertThat(score.differences).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"tuning", "heldout"})
    void nearlyEverythingOfTheCorpusReadsRight(String group) throws Exception {
        ManifestJudge.Score judge =
                ManifestJudge.over(RESOURCES.resolve("corpus").resolve(group));
        System.out.println("corpus, " + group + " group:\n" + judge.report());
        assertThat(judge.asked("sets found")).isGreaterThan(400);
        assertThat(judge.share("sets found")).isGreaterThanOrEqualTo(.99);
        assertThat(judge.share("sets real")).isGreaterThanOrEqualTo(.99);
        assertThat(judge.share("status")).isGreaterThanOrEqualTo(.96);
        for (String field : new String[] {"maker", "inches", "serial", "asking"}) {
            assertThat(judge.share(field)).as(field).isGreaterThanOrEqualTo(.97);
        }
        assertThat(judge.share("claimed")).isGreaterThanOrEqualTo(.95);
        assertThat(judge.share("model")).isGreaterThanOrEqualTo(group.equals("tuning") ? .97 : .94);
    }
}
