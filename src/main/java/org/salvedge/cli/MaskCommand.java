package org.salvedge.cli;

import java.util.LinkedHashMap;
import java.util.Map;

/** A line fault: from what is seen to the test, and from trial to trial to the mask. */
@picocli.CommandLine.Command(
        description = "A line fault: the likely class and the next test, the next contacts to mask, the recipe book.",
        synopsisSubcommandLabel = "walk|plan|record|recipes|export|import",
        footer = {
            "",
            "A mask insulates row-signal contacts of one side's ribbon, so that the other side drives the rows alone. It is a",
            "workaround: the fault stays, and the buyer must be told. Panels are glass; supplies stay charged after unplugging.",
            "Example: salvedge mask walk L0042-007 --direction horizontal --half left"
        })
final class MaskCommand extends Command {
    @Override
    Map<String, Command> within() {
        Map<String, Command> within = new LinkedHashMap<>();
        within.put("walk", new MaskWalkCommand());
        within.put("plan", new MaskPlanCommand());
        within.put("record", new MaskRecordCommand());
        within.put("recipes", new MaskRecipesCommand());
        within.put("export", new MaskExportCommand());
        within.put("import", new MaskImportCommand());
        return within;
    }

    @Override
    int run(Session session) {
        throw new Usage("mask: say what: walk, plan, record, recipes, export or import. See: salvedge mask --help");
    }
}
