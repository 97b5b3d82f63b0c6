package org.salvedge.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.LineWalk;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Coded;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** From what is seen to the likely class and the next cheapest test. */
@picocli.CommandLine.Command(
        description = "From what is seen on the screen to the likely fault and the next cheapest test.",
        footer = {
            "",
            "What is not said is asked for on a terminal. Example:",
            "salvedge mask walk L0042-007 --direction horizontal --half left --pressure stays"
        })
final class MaskWalkCommand extends Command {
    @Parameters(arity = "0..1", paramLabel = "UNIT", description = "The set, for the distance to judge it from.")
    @Nullable
    String unit;

    @Option(
            names = "--direction",
            paramLabel = "horizontal|vertical|whole_screen",
            description = "How the lines run, or whether the whole screen shows it.")
    LineWalk.@Nullable Direction direction;

    @Option(names = "--extent", paramLabel = "one_line|band", description = "One line, or a band of them.")
    LineWalk.@Nullable Extent extent;

    @Option(
            names = "--half",
            paramLabel = "left|right|both",
            description = "Where it stays when one half is driven at a time (one ribbon unplugged).")
    LineWalk.@Nullable HalfDriven half;

    @Option(
            names = "--pressure",
            paramLabel = "changes|stays",
            description = "What it does when the ribbon is pressed.")
    LineWalk.@Nullable UnderPressure pressure;

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if (format == Format.CSV) {
            throw new Usage("--format: mask walk prints table or json");
        }
        @Nullable String distance = null;
        if (unit != null) {
            try (Ledger ledger = session.shop().read()) {
                distance = Distance.words(UnitPick.set(UnitPick.entry(ledger, UnitPick.unit(ledger, unit))));
            }
        }
        ask(session);
        if (direction == null) {
            throw new Usage("missing: --direction horizontal|vertical|whole_screen");
        }
        LineWalk.Advice advice = LineWalk.of(new LineWalk.Seen(
                direction,
                extent == null ? LineWalk.Extent.NOT_SAID : extent,
                half == null ? LineWalk.HalfDriven.NOT_TRIED : half,
                pressure == null ? LineWalk.UnderPressure.NOT_TRIED : pressure));
        if (format == Format.JSON) {
            Map<String, @Nullable Object> json = new LinkedHashMap<>();
            json.put("fault", advice.fault());
            json.put("fix", advice.fix());
            json.put("why", advice.why());
            json.put("tests", advice.tests());
            session.json(json);
            return Status.DONE;
        }
        session.say("Likely " + advice.fault().code()
                + (advice.fix() == null ? "" : "; fix: " + advice.fix().code()));
        Wording.say(session, advice.why());
        String next = "Next: ";
        for (String test : advice.tests()) {
            session.say(next + test);
            next = "then: ";
        }
        if (distance != null) {
            session.say(distance);
        }
        return Status.DONE;
    }

    private void ask(Session session) {
        if (direction != null || !session.terminal().asks()) {
            return;
        }
        direction =
                pick(session, "Lines or fault run", LineWalk.Direction.values(), LineWalk.Direction.values().length);
        if (direction == LineWalk.Direction.WHOLE_SCREEN) {
            return;
        }
        extent = extent == null ? pick(session, "Extent", LineWalk.Extent.values(), 2) : extent;
        pressure = pressure == null
                ? pick(session, "Under pressure on the ribbon it", LineWalk.UnderPressure.values(), 3)
                : pressure;
        if (direction == LineWalk.Direction.HORIZONTAL && half == null) {
            half = pick(session, "One half driven at a time, it stays on", LineWalk.HalfDriven.values(), 4);
        }
    }

    /** One of the first of some values, by its number or the beginning of its word; the last one offered where nothing is said. */
    private static <E extends Enum<E> & Coded> @Nullable E pick(Session session, String what, E[] values, int offered) {
        StringBuilder question = new StringBuilder(what).append(':');
        for (int i = 0; i < offered; i++) {
            question.append("  ")
                    .append(i + 1)
                    .append(' ')
                    .append(values[i].code().replace('_', ' '));
        }
        while (true) {
            String answer = session.terminal().answer(question + "  > ");
            if (answer == null || answer.isBlank()) {
                return null;
            }
            String typed = answer.strip().replace(' ', '_');
            for (int i = 0; i < offered; i++) {
                if (typed.equals(String.valueOf(i + 1)) || values[i].code().startsWith(typed)) {
                    return values[i];
                }
            }
        }
    }
}
