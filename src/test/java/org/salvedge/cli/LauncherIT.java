package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.cli.Launched.Result;

/** The launcher finds the program and Java, starts it, and says clearly what is missing. */
class LauncherIT {
    private final List<Path> links = new ArrayList<>();
    private Path folder;

    @BeforeEach
    void folder(@TempDir Path temporary) {
        folder = temporary;
    }

    @AfterEach
    void unlink() throws IOException {
        for (Path link : links) {
            Files.delete(link);
        }
    }

    private Path link(Path link, Path target) throws IOException {
        links.add(link);
        return Files.createSymbolicLink(link, target);
    }

    @Test
    void helpIsTheTextThatTheProgramItselfGives() {
        TestShop shop = new TestShop(folder);
        for (String name : Commands.names()) {
            shop.run(name, "--help");
            assertThat(Launched.in(folder).run(name, "--help").out()).isEqualTo(shop.out());
            assertThat(Launched.in(folder).run("help", name).out()).isEqualTo(shop.out());
        }
        shop.run("--help");
        assertThat(Launched.in(folder).run("--help").out()).isEqualTo(shop.out());
        assertThat(Launched.in(folder).run("--version").out()).matches("salvedge \\d+\\.\\d+\\.\\d+.*\n");
        assertThat(Launched.in(folder).run().out()).isEqualTo(shop.out());
    }

    @Test
    void withoutPreparedTextsTheProgramGivesHelpItself() throws IOException {
        Path tree = tree();
        copy(Launched.ROOT.resolve("target/salvedge.jar"), tree.resolve("target/salvedge.jar"));
        link(tree.resolve("target/lib"), Launched.ROOT.resolve("target/lib"));
        Files.createDirectories(tree.resolve("target/launch"));
        Files.writeString(tree.resolve("target/launch.new"), "in the way of preparing");
        Result result = Launched.in(folder).as(tree.resolve("salvedge")).run("show", "--help");
        assertThat(result.err()).isEmpty();
        assertThat(result.out()).startsWith("Usage: salvedge show");
    }

    @Test
    void worksThroughLinksFromAnywhereAndWithSpacesInItsPath() throws IOException {
        Path away = Files.createDirectories(folder.resolve("far away/it's here"));
        Path link = link(away.resolve("one"), Launched.LAUNCHER);
        Path second = link(folder.resolve("two"), Path.of("far away/it's here/one"));
        assertThat(Launched.in(away).as(link).run("--shop", "the shop", "init").status())
                .isZero();
        assertThat(away.resolve("the shop/shop.db")).exists();
        Result shown = Launched.in(folder)
                .as(second)
                .run("--shop", away.resolve("the shop").toString(), "yield", "--format", "json");
        assertThat(shown.out()).isEqualTo("{\"rows\":[]}\n");
    }

    @Test
    void argumentsArriveAsTheyAre() {
        Launched.in(folder).run("init");
        Result result = Launched.in(folder).run("show", "@L1 *$HOME`id`\"");
        assertThat(result.err().replaceAll("\n +", " ")).contains("no set has the label \"@L1 *$HOME`id`\"\"");
    }

    @Test
    void aMissingJavaIsSaid() throws IOException {
        Path bin = tools();
        Result result = Launched.in(folder)
                .with("JAVA_HOME", "")
                .with("PATH", bin.toString())
                .run("show", "x");
        assertThat(result.status()).isEqualTo(127);
        assertThat(result.err()).contains("needs Java 17 or newer and found none", "JAVA_HOME");
        Result home = Launched.in(folder).with("JAVA_HOME", "/nowhere").run("show", "x");
        assertThat(home.status()).isEqualTo(127);
        assertThat(home.err()).contains("JAVA_HOME is /nowhere, but there is no bin/java in it");
    }

    @Test
    void anOldJavaIsSaid() throws IOException {
        Path home = folder.resolve("old");
        script(home.resolve("bin/java"), "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
        Path tree = tree();
        Files.createDirectories(tree.resolve("target/lib"));
        Files.writeString(tree.resolve("target/salvedge.jar"), "");
        Result result = Launched.in(folder)
                .as(tree.resolve("salvedge"))
                .with("JAVA_HOME", home.toString())
                .run("show", "x");
        assertThat(result.status()).isEqualTo(127);
        assertThat(result.err()).contains("needs Java 17 or newer").contains("11");
    }

    @Test
    void theProgramTakesTheLaunchersPlaceSoThatSignalsReachIt() throws IOException {
        Path home = java17();
        Path tree = tree();
        Files.createDirectories(tree.resolve("target/lib"));
        Files.writeString(tree.resolve("target/salvedge.jar"), "");
        Launched launched = Launched.in(folder).as(tree.resolve("salvedge")).with("JAVA_HOME", home.toString());
        Process process = launched.start("show", "x");
        assertThat(launched.end(process).out()).isEqualTo(process.pid() + "\n");
    }

    @Test
    void buildsOnFirstUseAndAgainWhenASourceIsNewer() throws IOException {
        Path tree = tree();
        Path bin = maven("printf x >> calls; echo jar > target/salvedge.jar");
        Launched launched = building(tree, bin);
        Result first = launched.run("--version");
        assertThat(first.err()).startsWith("salvedge: building, once").hasLineCount(1);
        assertThat(first.status()).isZero();
        assertThat(launched.run("--version").err()).isEmpty();
        assertThat(tree.resolve("calls")).hasContent("x");
        Files.writeString(tree.resolve("src/main/A.java"), "newer");
        Files.setLastModifiedTime(
                tree.resolve("src/main/A.java"),
                java.nio.file.attribute.FileTime.fromMillis(
                        java.time.Clock.systemUTC().millis() + 60_000));
        assertThat(launched.run("--version").err()).startsWith("salvedge: building");
        assertThat(tree.resolve("calls")).hasContent("xx");
        assertThat(launched.with("SALVEDGE_NO_BUILD", "1").run("--version").err())
                .isEmpty();
    }

    @Test
    void twoAtOnceBuildOnce() throws IOException {
        Path tree = tree();
        Path bin = maven("sleep 1; printf x >> calls; echo jar > target/salvedge.jar");
        Launched launched = building(tree, bin);
        Process one = launched.start("--version");
        Process two = launched.start("--version");
        assertThat(launched.end(one).status()).isZero();
        assertThat(launched.end(two).status()).isZero();
        assertThat(tree.resolve("calls")).hasContent("x");
    }

    @Test
    void aLockLeftBehindByADeadBuildIsNoHindrance() throws IOException {
        Path tree = tree();
        Path lock = Files.createDirectories(tree.resolve("target/.salvedge-lock"));
        Files.writeString(lock.resolve("pid"), "99999999\n");
        Path bin = maven("echo jar > target/salvedge.jar");
        assertThat(building(tree, bin).run("--version").status()).isZero();
        assertThat(lock).doesNotExist();
    }

    @Test
    void aFailedBuildShowsWhyAndLeavesNoLock() throws IOException {
        Path tree = tree();
        Path bin = maven("echo 'ERROR: it does not compile'; exit 1");
        Result result = building(tree, bin).run("--version");
        assertThat(result.status()).isEqualTo(Status.DEFECT);
        assertThat(result.err()).contains("it does not compile", "could not be built", "salvedge-build.log");
        assertThat(tree.resolve("target/.salvedge-lock")).doesNotExist();
    }

    @Test
    void aMissingMavenIsSaid() throws IOException {
        Path tree = tree();
        Path bin = tools();
        Result result = Launched.in(folder)
                .as(tree.resolve("salvedge"))
                .with("SALVEDGE_NO_BUILD", "")
                .with("JAVA_HOME", System.getProperty("java.home"))
                .with("PATH", bin.toString())
                .run("--version");
        assertThat(result.status()).isEqualTo(127);
        assertThat(result.err()).contains("needs Maven to be built and found none");
    }

    /** Says that it is Java 17, and its own process number to everything else. */
    private Path java17() throws IOException {
        Path home = folder.resolve("home");
        script(home.resolve("bin/javac"), "exit 1");
        script(home.resolve("bin/java"), "case $1 in -version) echo 'version \"17.0.1\"' >&2;; *) echo $$;; esac");
        return home;
    }

    private Launched building(Path tree, Path bin) throws IOException {
        return Launched.in(folder)
                .as(tree.resolve("salvedge"))
                .with("SALVEDGE_NO_BUILD", "")
                .with("JAVA_HOME", java17().toString())
                .with("PATH", bin + ":" + System.getenv("PATH"));
    }

    /** A place with the launcher and nothing built. */
    private Path tree() throws IOException {
        Path tree = Files.createDirectories(folder.resolve("a tree"));
        copy(Launched.LAUNCHER, tree.resolve("salvedge"));
        Files.setPosixFilePermissions(tree.resolve("salvedge"), PosixFilePermissions.fromString("rwxr-xr-x"));
        Files.writeString(tree.resolve("pom.xml"), "<project/>");
        Files.createDirectories(tree.resolve("src/main"));
        Files.createDirectories(tree.resolve("lots"));
        return tree;
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to.getParent());
        Files.copy(from, to);
    }

    private Path maven(String body) throws IOException {
        Path bin = Files.createDirectories(folder.resolve("bin"));
        script(bin.resolve("mvn"), body);
        return bin;
    }

    private static void script(Path file, String body) throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, "#!/bin/sh\n" + body + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    /** A PATH with what the launcher itself needs, and neither Java nor Maven. */
    private Path tools() throws IOException {
        Path bin = Files.createDirectories(folder.resolve("tools"));
        for (String tool : new String[] {
            "sh",
            "readlink",
            "find",
            "head",
            "ls",
            "sed",
            "mkdir",
            "rm",
            "cat",
            "mv",
            "sleep",
            "dirname",
            "cksum",
            "tail"
        }) {
            for (String place : new String[] {"/bin", "/usr/bin"}) {
                Path real = Path.of(place, tool);
                if (Files.exists(real) && !Files.exists(bin.resolve(tool))) {
                    link(bin.resolve(tool), real);
                }
            }
        }
        return bin;
    }
}
