package org.salvedge.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.salvedge.report.Screen;

/**
 * Run once by the launcher after a build, into a folder: writes the help texts that the launcher prints itself, keeps the
 * database's native library unpacked, and goes through the everyday commands in a throw-away shop, so that their classes can
 * be archived.
 */
public final class Rehearsal {
    private static final String NATIVE = "libsqlitejdbc";

    private final Path folder;

    private Rehearsal(Path folder) {
        this.folder = folder;
    }

    /** @param args the folder */
    public static void main(String[] args) throws IOException {
        Rehearsal rehearsal = new Rehearsal(Path.of(args[0]).toAbsolutePath());
        rehearsal.help();
        rehearsal.shop();
        rehearsal.keepNative();
        System.exit(0);
    }

    private void help() throws IOException {
        Path help = Files.createDirectories(folder.resolve("help"));
        Files.writeString(help.resolve("salvedge"), Overview.text());
        Files.writeString(help.resolve("version"), Version.text());
        for (String name : Commands.names()) {
            Command command = Commands.create(name);
            if (command != null) {
                Files.writeString(help.resolve(name), CommandLines.help(command, name));
            }
        }
    }

    private void shop() throws IOException {
        Path shop = folder.resolve("shop");
        for (List<String> command : List.of(List.of("init"))) {
            int status = run(shop, command);
            System.out.println(status + " " + command);
        }
        delete(shop);
    }

    private static int run(Path shop, List<String> command) {
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        int status = new Program(new Surroundings(
                        Clock.system(ZoneId.systemDefault()), writer, writer, shop, Map.of(), new NoTerminal()))
                .run(command.toArray(String[]::new));
        if (status != Status.DONE) {
            System.out.println(said);
        }
        return status;
    }

    private static void delete(Path shop) throws IOException {
        if (!Files.exists(shop)) {
            return;
        }
        try (Stream<Path> all = Files.walk(shop)) {
            for (Path path : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    /** The library that is loaded now would be deleted at the end; its name holds a number of its own. */
    private void keepNative() throws IOException {
        Path natives = folder.resolve("native");
        if (!Files.isDirectory(natives)) {
            return;
        }
        try (Stream<Path> all = Files.list(natives)) {
            Path loaded = all.filter(p -> p.getFileName().toString().matches(".*" + NATIVE + "\\.[a-z]+"))
                    .findFirst()
                    .orElse(null);
            if (loaded != null) {
                String name = loaded.getFileName().toString();
                Files.copy(loaded, natives.resolve(name.substring(name.indexOf(NATIVE))));
            }
        }
    }

    /** Nobody at the keyboard. */
    private static final class NoTerminal implements Terminal {
        @Override
        public boolean asks() {
            return false;
        }

        @Override
        public boolean watches() {
            return false;
        }

        @Override
        public @Nullable String answer(String question) {
            return null;
        }

        @Override
        public Screen screen() {
            return Screen.plain();
        }
    }
}
