package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PassingFilesTest {
    private static final int ROWS = 20_000;

    @Test
    void aProgramThatEndsWithinAWorkbookLeavesNothingOfItBehind(@TempDir Path folder) throws Exception {
        Path passing = Files.createDirectory(folder.resolve("passing"));
        Path said = folder.resolve("said");
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djava.io.tmpdir=" + passing,
                        "-cp",
                        System.getProperty("java.class.path"),
                        BrokenOff.class.getName())
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        assertThat(child.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(said).content().contains("1 on disk");
        try (Stream<Path> left = Files.list(passing)) {
            assertThat(left).isEmpty();
        }
    }

    /** A process of its own that ends while a long sheet waits on disk. */
    static final class BrokenOff {
        private BrokenOff() {}

        @SuppressWarnings({"SystemOut", "SystemExitOutsideMain"}) // the parent reads it
        public static void main(String[] args) throws IOException {
            PassingFiles.use();
            QuickBook book = new QuickBook(new XSSFWorkbook());
            Sheet sheet = book.createSheet("long");
            for (int r = 0; r < ROWS; r++) {
                sheet.createRow(r).createCell(0).setCellValue("a row that is long enough to fill the memory soon " + r);
            }
            List<Path> files = book.passing();
            System.out.println(files.size() + " on disk");
            System.out.flush();
            System.exit(1);
        }
    }
}
