/**
 * Yield, time per fix and margin by any key, counted by Tablesaw from the ledger's history. The only package that
 * sees Tablesaw.
 */
@NullMarked
package org.salvedge.yield;

import org.jspecify.annotations.NullMarked;
