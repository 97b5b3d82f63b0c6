package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What help says of a command is so, and can be typed. */
class HelpTest {
    private static final int WIDTH = 100;
    private static final String EXAMPLE = "Example: salvedge ";
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    /** Names of all commands, those within others too, as they are typed. */
    static Stream<String> commands() {
        List<String> names = new ArrayList<>();
        for (String name : Commands.names()) {
            names.add(name);
            command(name).within().keySet().forEach(inner -> names.add(name + " " + inner));
        }
        return names.stream();
    }

    private static Command command(String name) {
        return Objects.requireNonNull(Commands.create(name), name);
    }

    private static String help(String typed, Path folder) {
        TestShop shop = new TestShop(folder);
        List<String> words = new ArrayList<>(List.of(typed.split(" ")));
        words.add("--help");
        assertThat(shop.run(words.toArray(String[]::new))).isEqualTo(Status.DONE);
        return shop.out();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void hasAnExampleThatTheCommandTakes(String typed, @TempDir Path folder) {
        List<String> examples = help(typed, folder)
                .lines()
                .filter(line -> line.startsWith(EXAMPLE))
                .map(line -> line.substring(EXAMPLE.length()))
                .toList();
        assertThat(examples).as(typed).isNotEmpty();
        for (String example : examples) {
            List<String> words = words(example);
            CommandLines.of(command(words.get(0)), words.get(0))
                    .parseArgs(words.subList(1, words.size()).toArray(String[]::new));
            assertThat(example).startsWith(typed);
        }
    }

    @ParameterizedTest
    @MethodSource("commands")
    void hasNoPlaceholderAndIsBrokenOnceByTheWidth(String typed, @TempDir Path folder) {
        String help = help(typed, folder);
        assertThat(help).doesNotContain("${").startsWith("Usage: salvedge " + typed);
        List<String> lines = help.lines().toList();
        for (int i = 1; i < lines.size(); i++) {
            String line = lines.get(i - 1);
            String next = lines.get(i);
            boolean sentence = !line.isEmpty() && !next.isEmpty() && line.charAt(0) != ' ' && next.charAt(0) != ' ';
            boolean ends = line.matches("Usage: .*|.*[.:\"]") || line.startsWith(EXAMPLE) || next.startsWith(EXAMPLE);
            if (sentence && !ends) {
                String first = next.split(" ")[0];
                assertThat(line.length() + 1 + first.length())
                        .as("a line broken before the width, in %s: %s", typed, line)
                        .isGreaterThanOrEqualTo(WIDTH);
            }
        }
    }

    @Test
    void aMissingReasonIsSaidAndNotAnOptionThatIsThere(@TempDir Path folder) {
        TestShop shop = TestShop.withLot(folder);
        assertThat(shop.run("amend", "1", "--freight", "20")).isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains("missing: --why TEXT").doesNotContain("is not an option");
    }

    @Test
    void theHintNamesTheWholeCommand(@TempDir Path folder) {
        TestShop shop = TestShop.withLot(folder);
        assertThat(shop.run("mask", "plan", "--tolerence", "1")).isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains("See: salvedge mask plan --help");
    }

    private static List<String> words(String typed) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(typed);
        while (word.find()) {
            words.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        return words;
    }
}
