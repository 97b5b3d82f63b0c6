package org.salvedge.cli;

import org.salvedge.shop.Coded;

/** How a table is printed. */
enum Format implements Coded {
    TABLE,
    CSV,
    JSON;

    @Override
    public String code() {
        return Coded.lowerCase(this);
    }
}
