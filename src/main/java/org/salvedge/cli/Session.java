package org.salvedge.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.salvedge.report.CsvWriter;
import org.salvedge.report.JsonWriter;
import org.salvedge.report.Screen;
import org.salvedge.report.Table;
import org.salvedge.report.TablePrinter;
import org.salvedge.report.Visible;

/** One run of one command: its surroundings, its shop, and the ways to say something. */
final class Session {
    private final Surroundings surroundings;
    private final ShopFolder shop;

    Session(Surroundings surroundings, Path shop) {
        this.surroundings = surroundings;
        this.shop = new ShopFolder(shop, surroundings.clock());
    }

    Surroundings surroundings() {
        return surroundings;
    }

    Terminal terminal() {
        return new CleanTerminal(surroundings.terminal());
    }

    ShopFolder shop() {
        return shop;
    }

    PrintWriter out() {
        return surroundings.out();
    }

    /** A file named on the command line. */
    Path file(Path named) {
        return surroundings.folder().resolve(named).normalize();
    }

    /** Today by the shop's zone. */
    LocalDate today() {
        return LocalDate.now(surroundings.clock().withZone(shop.settings().zone()));
    }

    /** Now by the shop's zone, to the second. */
    LocalDateTime now() {
        return LocalDateTime.now(surroundings.clock().withZone(shop.settings().zone()))
                .withNano(0);
    }

    /** Text as it may go to the terminal: what that might obey is made visible. */
    String visible(String text) {
        return Visible.text(text, terminal().screen());
    }

    /** A line on standard output; what a terminal might obey is made visible. */
    void say(String line) {
        folded(line).forEach(surroundings.out()::println);
    }

    /** A line on standard error. */
    void remark(String line) {
        folded(line).forEach(surroundings.err()::println);
    }

    /** Broken between words where a narrow terminal would break it within one; elsewhere a line stays a line. */
    private List<String> folded(String line) {
        Screen screen = terminal().screen();
        String text = visible(line);
        return screen.width() < Screen.WIDEST ? Wrap.at(screen.width(), text) : List.of(text);
    }

    void print(Table table, Format format) {
        switch (format) {
            case CSV -> CsvWriter.write(table, out());
            case JSON -> JsonWriter.write(table, out());
            default ->
                out().print(new TablePrinter(
                                terminal().screen(), shop.settings().currency())
                        .print(table));
        }
    }

    void json(Object value) {
        JsonWriter.write(value, out());
    }
}
