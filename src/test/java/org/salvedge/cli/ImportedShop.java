package org.salvedge.cli;

import java.nio.file.Path;
import java.util.List;
import org.salvedge.shop.Fact;

/** A shop whose record came by import, so that each thing counts as recorded on the day it happened. */
final class ImportedShop {
    private ImportedShop() {}

    static TestShop of(List<? extends Fact> facts, Path folder) {
        TestShop work = new TestShop(folder.resolve("work"));
        must(work, "init", "--zone", "Europe/Berlin");
        work.book(facts.toArray(Fact[]::new));
        must(work, "export", folder.resolve("package").toString());
        TestShop shop = new TestShop(folder.resolve("shop"));
        must(shop, "init", "--zone", "Europe/Berlin");
        must(shop, "import", folder.resolve("package").toString());
        return shop;
    }

    private static void must(TestShop shop, String... args) {
        if (shop.run(args) != Status.DONE) {
            throw new IllegalStateException(String.join(" ", args) + ": " + shop.err());
        }
    }
}
