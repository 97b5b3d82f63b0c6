package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Refused;

class NewFileTest {
    private static final int TIMES = 10;

    @Test
    void ofTwoWhoMakeOneLedgerOneIsRefusedAndTheOthersStays(@TempDir Path folder) throws Exception {
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            for (int i = 0; i < TIMES; i++) {
                Path file = folder.resolve("shop" + i + ".db");
                CyclicBarrier both = new CyclicBarrier(2);
                Callable<Boolean> making = () -> {
                    both.await();
                    return isMade(file);
                };
                Future<Boolean> one = two.submit(making);
                Future<Boolean> other = two.submit(making);
                assertThat(one.get() ^ other.get()).as("one of two makes it").isTrue();
                assertThat(isMade(file)).as("a third does").isFalse();
                try (Database there = Database.forQueries(file)) {
                    there.doRead(c -> Schema.check(c, EUR));
                }
            }
        } finally {
            two.shutdownNow();
        }
    }

    private static boolean isMade(Path file) {
        try {
            NewFile.make(file, EUR).close();
            return true;
        } catch (Refused e) {
            assertThat(e).hasMessageContaining("there is a ledger already");
            return false;
        }
    }
}
