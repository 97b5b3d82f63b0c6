package org.salvedge.cli;

/** How a table is printed. */
enum Format {
    TABLE,
    CSV,
    JSON
}
