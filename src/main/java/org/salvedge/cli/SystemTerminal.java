package org.salvedge.cli;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.report.Screen;

/** The terminal that started the program; no console where input or output is a file or a pipe. */
final class SystemTerminal implements Terminal {
    private final @Nullable Console console;
    private final BufferedReader input;
    private final Map<String, String> environment;
    private final int columns;

    /** @param columns 0 = not known */
    SystemTerminal(@Nullable Console console, BufferedReader input, Map<String, String> environment, int columns) {
        this.console = console;
        this.input = input;
        this.environment = environment;
        this.columns = columns;
    }

    @Override
    public boolean asks() {
        return console != null;
    }

    @Override
    public boolean watches() {
        return console != null && !dumb();
    }

    @Override
    public @Nullable String answer(String question) {
        if (console == null) {
            return null;
        }
        console.writer().print(question);
        console.flush();
        return console.readLine();
    }

    @Override
    public @Nullable String line(String question) {
        if (console != null) {
            return answer(question);
        }
        try {
            return input.readLine();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public @Nullable String secret(String question) {
        char[] typed = console == null ? null : console.readPassword("%s", question);
        return typed == null ? null : new String(typed);
    }

    @Override
    public Screen screen() {
        if (console == null) {
            return dumb() || saysAscii() ? Screen.ascii() : Screen.plain();
        }
        boolean colour = !dumb() && value("NO_COLOR").isEmpty();
        return new Screen(columns(columns, environment), !dumb() && speaksUnicode(), colour);
    }

    /** @param asked what the terminal itself said; 0 = it was not asked, and the shell's word counts */
    static int columns(int asked, Map<String, String> environment) {
        String said = environment.getOrDefault("COLUMNS", "");
        boolean number = said.matches("[1-9][0-9]{0,3}");
        return asked > 0 ? asked : number ? Integer.parseInt(said) : Screen.WIDEST;
    }

    private boolean dumb() {
        return value("TERM").equals("dumb");
    }

    /** A file or a pipe may be read anywhere: only a locale that names ASCII means it. */
    private boolean saysAscii() {
        for (String name : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
            String locale = value(name);
            if (!locale.isEmpty()) {
                return locale.equals("C") || locale.equals("POSIX");
            }
        }
        return false;
    }

    private boolean speaksUnicode() {
        for (String name : new String[] {"LC_ALL", "LC_CTYPE", "LANG"}) {
            String locale = value(name).toLowerCase(Locale.ROOT);
            if (!locale.isEmpty()) {
                return locale.contains("utf-8") || locale.contains("utf8");
            }
        }
        return false;
    }

    private String value(String name) {
        return environment.getOrDefault(name, "");
    }
}
