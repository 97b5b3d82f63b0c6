package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The page of licences names what the program runs with, no more and no less. */
class ThirdPartyIT {
    private static final Pattern VERSION = Pattern.compile("-\\d.*\\.jar$");
    private static final Pattern BRACKETS = Pattern.compile(" \\([^)]*\\)");

    @Test
    void everyJarThatTheProgramRunsWithHasItsLicenceNamed() throws IOException {
        TreeSet<String> named = new TreeSet<>();
        for (String line : Files.readAllLines(Launched.ROOT.resolve("THIRD-PARTY.md"))) {
            String[] cells = line.split("\\|", -1);
            if (cells.length == 4 && !cells[1].isBlank() && !cells[1].contains("---")) {
                Stream.of(BRACKETS.matcher(cells[2]).replaceAll("").split(",", -1))
                        .map(String::strip)
                        .forEach(named::add);
            }
        }
        named.remove("jars"); // the heading
        try (Stream<Path> jars = Files.list(Launched.ROOT.resolve("target/lib"))) {
            List<String> run = jars.map(jar ->
                            VERSION.matcher(String.valueOf(jar.getFileName())).replaceFirst(""))
                    .toList();
            assertThat(run).isNotEmpty().containsExactlyInAnyOrderElementsOf(named);
        }
    }
}
