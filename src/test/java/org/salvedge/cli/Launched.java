package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The launcher as a process of its own, with the program as it was packaged. */
final class Launched {
    static final Path ROOT = Path.of("").toAbsolutePath();
    static final Path LAUNCHER = ROOT.resolve("salvedge");

    private static final int PATIENCE_SECONDS = 120;

    private final List<String> before = new ArrayList<>();
    private final Map<String, String> environment = new HashMap<>();
    private Path folder = ROOT;
    private Path launcher = LAUNCHER;

    /** What came of it. */
    record Result(int status, String out, String err) {}

    static Launched in(Path folder) {
        Launched launched = new Launched();
        launched.folder = folder;
        launched.environment.put("SALVEDGE_NO_BUILD", "1");
        launched.environment.put("LC_ALL", "C.UTF-8");
        launched.environment.put("TERM", "xterm");
        return launched;
    }

    Launched as(Path script) {
        launcher = script;
        return this;
    }

    /** Another program that starts the launcher. */
    Launched under(String... program) {
        before.clear();
        before.addAll(List.of(program));
        return this;
    }

    /** An empty value takes a variable away. */
    Launched with(String variable, String value) {
        environment.put(variable, value);
        return this;
    }

    Process start(String... args) {
        List<String> command = new ArrayList<>(before);
        command.add(launcher.toString());
        command.addAll(List.of(args));
        try {
            ProcessBuilder builder = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectOutput(Files.createTempFile("launched", ".out").toFile())
                    .redirectError(Files.createTempFile("launched", ".err").toFile());
            environment.forEach((variable, value) -> {
                if (value.isEmpty()) {
                    builder.environment().remove(variable);
                } else {
                    builder.environment().put(variable, value);
                }
            });
            Process process = builder.start();
            process.getOutputStream().close();
            outputs.put(
                    process,
                    List.of(
                            builder.redirectOutput().file().toPath(),
                            builder.redirectError().file().toPath()));
            return process;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private final Map<Process, List<Path>> outputs = new HashMap<>();

    Result end(Process process) {
        try {
            if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError("still running after " + PATIENCE_SECONDS + " s");
            }
            List<Path> files = java.util.Objects.requireNonNull(outputs.get(process));
            Result result = new Result(
                    process.exitValue(),
                    Files.readString(files.get(0), StandardCharsets.UTF_8),
                    Files.readString(files.get(1), StandardCharsets.UTF_8));
            Files.delete(files.get(0));
            Files.delete(files.get(1));
            return result;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    Result run(String... args) {
        return end(start(args));
    }
}
