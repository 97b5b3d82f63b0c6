package org.salvedge.ledger;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** Work on a second connection in a second thread: SQLite allows any number of readers. */
final class Beside implements AutoCloseable {
    private final FutureTask<Boolean> task;

    private Beside(FutureTask<Boolean> task) {
        this.task = task;
    }

    static Beside start(Database database, Database.Step reading) {
        FutureTask<Boolean> task = new FutureTask<>(() -> {
            try (Database other = database.again()) {
                other.doRead(reading);
                return true;
            }
        });
        Thread thread = new Thread(task, "ledger reader");
        thread.setDaemon(true);
        thread.start();
        return new Beside(task);
    }

    /** Waits for the work to end. */
    void join() {
        try {
            task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading the ledger", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException known) {
                throw known;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Never leaves the thread behind, also when the first one failed. */
    @Override
    public void close() {
        try {
            task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
            // told by join, or overtaken by the failure that closes this
        }
    }
}
