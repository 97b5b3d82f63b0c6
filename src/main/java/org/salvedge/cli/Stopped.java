package org.salvedge.cli;

import java.util.function.Supplier;

/** Answers an interruption of the program (Ctrl-C) with a sentence on standard error. */
final class Stopped {
    private Stopped() {}

    /**
     * Does the work; an interruption meanwhile is answered.
     *
     * @param sentence must hold at whatever moment the stop comes
     */
    static <T> T during(Surroundings surroundings, String sentence, Supplier<T> work) {
        Thread hook = new Thread(
                () -> {
                    surroundings.err().println("\nsalvedge: " + sentence);
                    surroundings.err().flush();
                },
                "stopped");
        Runtime.getRuntime().addShutdownHook(hook);
        try {
            return work.get();
        } finally {
            takeAway(hook);
        }
    }

    private static void takeAway(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The program is stopping: the sentence is being said.
            return;
        }
    }
}
