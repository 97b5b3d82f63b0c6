package org.salvedge.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The commands by name. One is made only when it is called: looking through the options of all of them would cost every call a
 * third of a second.
 */
final class Commands {
    /** In the order of the overview; every name here is known to {@link #create}. */
    static final List<Moment> MOMENTS = List.of(
            new Moment("Setting up", List.of("demo", "init", "import", "export", "completion")),
            new Moment("A lot", List.of("preview", "worth", "bid", "receive")),
            new Moment(
                    "At the bench", List.of("queue", "bench", "sheet", "attempt", "mask", "harvest", "place", "wait")),
            new Moment(
                    "A set leaves, or comes back",
                    List.of("offer", "sell", "strip", "recycle", "send-back", "lost", "comeback")),
            new Moment("Looking things up", List.of("yield", "month", "hindsight", "show", "audit")),
            new Moment("Corrections", List.of("amend", "undo", "regroup")));

    /** A moment in the shop's work, and the commands that belong to it. */
    record Moment(String title, List<String> commands) {}

    private Commands() {}

    static @Nullable Command create(String name) {
        return switch (name) {
            case "amend" -> new AmendCommand();
            case "attempt" -> new AttemptCommand();
            case "audit" -> new AuditCommand();
            case "bench" -> new BenchCommand();
            case "bid" -> new BidCommand();
            case "comeback" -> new ComebackCommand();
            case "demo" -> new DemoCommand();
            case "completion" -> new CompletionCommand();
            case "export" -> new ExportCommand();
            case "hindsight" -> new HindsightCommand();
            case "harvest" -> new HarvestCommand();
            case "import" -> new ImportCommand();
            case "init" -> new InitCommand();
            case "lost" -> new LostCommand();
            case "mask" -> new MaskCommand();
            case "month" -> new MonthCommand();
            case "offer" -> new OfferCommand();
            case "place" -> new PlaceCommand();
            case "preview" -> new PreviewCommand();
            case "queue" -> new QueueCommand();
            case "receive" -> new ReceiveCommand();
            case "recycle" -> new RecycleCommand();
            case "regroup" -> new RegroupCommand();
            case "sell" -> new SellCommand();
            case "send-back" -> new SendBackCommand();
            case "sheet" -> new SheetCommand();
            case "show" -> new ShowCommand();
            case "strip" -> new StripCommand();
            case "undo" -> new UndoCommand();
            case "wait" -> new WaitCommand();
            case "worth" -> new WorthCommand();
            case "yield" -> new YieldCommand();
            default -> null;
        };
    }

    static List<String> names() {
        return MOMENTS.stream().flatMap(m -> m.commands().stream()).toList();
    }
}
