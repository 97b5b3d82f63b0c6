package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.cli.Launched.Result;

/** The tour in README.md is what the program prints, command by command, on the shop that the demo builds. */
class TourIT {
    private static final String INDENT = "    ";
    private static final String PROMPT = INDENT + "$ salvedge ";
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    /** A command of the tour, and the lines below it; a line of dots alone stands for any. */
    private record Step(List<String> command, List<String> shown) {}

    @Test
    void everyLineShownIsPrinted(@TempDir Path temporary) throws IOException {
        Path shop = temporary.resolve("shop");
        Result demo = Launched.in(temporary).run("demo", shop.toString());
        assertThat(demo.status()).as(demo.err()).isZero();
        assertThat(demo.out().lines().filter(line -> line.startsWith("  salvedge ")))
                .extracting(line -> line.strip().split(" ")[1])
                .doesNotHaveDuplicates();
        List<Step> tour = steps(Files.readAllLines(Launched.ROOT.resolve("README.md")));
        assertThat(tour).hasSizeGreaterThan(4);
        for (Step step : tour) {
            Result result = Launched.in(shop).run(step.command.toArray(String[]::new));
            List<String> printed =
                    new ArrayList<>((result.out() + result.err()).lines().toList());
            Iterator<String> rest = printed.iterator();
            for (String line : step.shown) {
                assertThat(found(rest, line))
                        .as(
                                "README: after %s, in this order: %s%nprinted:%n%s",
                                step.command, line, String.join("\n", printed))
                        .isTrue();
            }
        }
    }

    private static boolean found(Iterator<String> printed, String line) {
        while (printed.hasNext()) {
            if (printed.next().stripTrailing().equals(line)) {
                return true;
            }
        }
        return false;
    }

    private static List<Step> steps(List<String> lines) {
        List<Step> steps = new ArrayList<>();
        Iterator<String> all = lines.iterator();
        Step open = null;
        while (all.hasNext()) {
            String line = all.next();
            if (line.startsWith(PROMPT)) {
                StringBuilder command = new StringBuilder(line.substring(PROMPT.length()));
                while (command.charAt(command.length() - 1) == '\\') {
                    command.setLength(command.length() - 1);
                    command.append(' ').append(all.next().strip());
                }
                open = new Step(words(command), new ArrayList<>());
                steps.add(open);
            } else if (!line.startsWith(INDENT)) {
                open = line.isEmpty() ? open : null;
            } else if (open != null && !line.strip().equals("…")) {
                open.shown.add(line.substring(INDENT.length()).stripTrailing());
            }
        }
        return steps;
    }

    private static List<String> words(CharSequence command) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(command);
        while (word.find()) {
            words.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        return words;
    }
}
