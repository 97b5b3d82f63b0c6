package org.salvedge.cli;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;

/** Entry point of the program, and the only place that knows the real clock, streams, folder and environment. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        Surroundings real = new Surroundings(
                Clock.system(ZoneId.systemDefault()),
                writer(FileDescriptor.out),
                writer(FileDescriptor.err),
                Path.of("").toAbsolutePath(),
                System.getenv(),
                new SystemTerminal(
                        System.console(),
                        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)),
                        System.getenv(),
                        Integer.getInteger("salvedge.columns", 0)));
        System.exit(new Program(real).run(args));
    }

    /** What we write is UTF-8, whatever the machine says. */
    private static PrintWriter writer(FileDescriptor to) {
        return new PrintWriter(
                new BufferedWriter(new OutputStreamWriter(new FileOutputStream(to), StandardCharsets.UTF_8)));
    }
}
