/**
 * The shop's record in one SQLite file: append-only entries, corrections that supersede, as-of reads, import and export. The only package that
 * sees JDBC.
 */
@NullMarked
package org.salvedge.ledger;

import org.jspecify.annotations.NullMarked;
