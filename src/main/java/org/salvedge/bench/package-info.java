/**
 * What to take next, which contacts to mask next, release checks, donors. Never
 * writes to the ledger.
 */
@NullMarked
package org.salvedge.bench;

import org.jspecify.annotations.NullMarked;
