package org.salvedge.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The commands by name. One is made only when it is called: looking through the options of all of them would cost every call a
 * third of a second.
 */
final class Commands {
    /** In the order of the overview; every name here is known to {@link #create}. */
    static final List<Moment> MOMENTS = List.of(new Moment("Setting up", List.of("init")));

    /** A moment in the shop's work, and the commands that belong to it. */
    record Moment(String title, List<String> commands) {}

    private Commands() {}

    static @Nullable Command create(String name) {
        return switch (name) {
            case "init" -> new Init();
            default -> null;
        };
    }

    static List<String> names() {
        return MOMENTS.stream().flatMap(m -> m.commands().stream()).toList();
    }
}
