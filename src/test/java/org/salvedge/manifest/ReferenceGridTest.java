package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javax.xml.stream.XMLInputFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReferenceGridTest {
    @Test
    void aReaderInTestScopeDoesNotChangeTheStaxOfTheCodeUnderTest() {
        assertThat(XMLInputFactory.newFactory().getClass().getName()).startsWith("com.sun.xml.internal");
    }

    @ParameterizedTest
    @MethodSource("org.salvedge.manifest.CsvCases#all")
    void theReferenceReaderKeepsThePublishedRules(CsvCases.Case c) {
        List<List<String>> records = ReferenceGrid.csv(c.text(), ',').stream()
                .filter(r -> !r.equals(List.of("")))
                .toList();

        assertThat(records).isEqualTo(c.records());
    }
}
