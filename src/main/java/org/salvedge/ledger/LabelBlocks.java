package org.salvedge.ledger;

import java.util.HashMap;
import java.util.Map;
import org.salvedge.shop.LabelSource;

/**
 * Labels of sets, read when they are asked for, those recorded about the same time together: a review of a long record names few of
 * its sets, and those are mostly the latest. A label is never changed, so that it does not matter when it is read. Ends with its ledger.
 */
final class LabelBlocks implements LabelSource {
    private final Database database;
    private final Map<Integer, String[]> blocks = new HashMap<>();

    LabelBlocks(Database database) {
        this.database = database;
    }

    @Override
    public synchronized String of(int setId) {
        return blocks.computeIfAbsent(LabelBlock.of(setId), this::read)[LabelBlock.place(setId)];
    }

    private String[] read(int block) {
        String[] labels = new String[LabelBlock.SIZE];
        database.doRead(connection -> LabelBlock.read(connection, block, labels, 0));
        return labels;
    }
}
