package org.salvedge.manifest.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.salvedge.shop.Claim;

/** Remarks as sellers write them, each with the claims that a careful person would take it for. */
class ClaimReaderTest {
    private static final ClaimReader READER = new ClaimReader(Map.of());

    static Stream<Arguments> remarks() throws IOException {
        Stream<Arguments> all = Stream.of();
        for (String language : List.of("english", "german", "french", "spanish")) {
            List<String> lines = Files.readAllLines(Path.of("src/test/resources/claims", language + ".tsv"));
            all = Stream.concat(
                    all,
                    lines.stream()
                            .filter(line -> !line.isBlank())
                            .map(line -> line.split("\t", 2))
                            .map(parts -> Arguments.of(parts[1], List.of(parts[0].split("\\|")))));
        }
        return all;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("remarks")
    void aRemarkClaimsWhatACarefulPersonReadsInIt(String remark, List<String> codes) {
        assertThat(codes).contains(READER.read(remark).claim().code());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "'no power, cracked screen', cracked",
        "'customer return, no power', dead",
        "'untested, screen cracked', cracked",
        "'working, horizontal lines', horizontal_lines",
        "'RETOURE; KEIN BILD', no_picture"
    })
    void theWorstOfSeveralWins(String remark, String code) {
        assertThat(READER.read(remark).claim()).isEqualTo(new Claim(code));
    }

    @Test
    void theOtherClaimsOfARemarkAreTold() {
        assertThat(READER.read("customer return, no power").others()).containsExactly(Claim.CUSTOMER_RETURN);
    }

    @Test
    void aBlankRemarkIsUntested() {
        assertThat(READER.read("  ").claim()).isEqualTo(Claim.UNTESTED);
    }

    @Test
    void unknownWordsAreOtherAndNotSure() {
        ClaimReader.Reading reading = READER.read("xyzzy plugh");
        assertThat(reading.claim()).isEqualTo(Claim.OTHER);
        assertThat(reading.sureness()).isLessThan(0.5);
    }

    @Test
    void wordsThatAreAllKnownAreSurerThanSomeUnknown() {
        assertThat(READER.read("horizontal lines").sureness())
                .isGreaterThan(READER.read("horizontal lines qqq zzz").sureness());
    }

    @Test
    void aShopsOwnWordsGoBeforeOurs() {
        ClaimReader own = new ClaimReader(Map.of("purple tint", "dim_patchy", "Klasse Z", "dead"));
        assertThat(own.read("purple tint").claim()).isEqualTo(Claim.DIM_PATCHY);
        assertThat(own.read("Gerät der klasse z").claim()).isEqualTo(Claim.DEAD);
    }

    @Test
    void aShopsOwnWordsLeaveBrokenGlassTheWorst() {
        ClaimReader own = new ClaimReader(Map.of("purple tint", "dim_patchy"));
        assertThat(own.read("purple tint, screen cracked").claim()).isEqualTo(Claim.CRACKED);
    }

    @Test
    void aShopsOwnClaimCodeIsTaken() {
        assertThat(new ClaimReader(Map.of("mirrored", "mirror"))
                        .read("picture mirrored")
                        .claim())
                .isEqualTo(new Claim("mirror"));
    }
}
