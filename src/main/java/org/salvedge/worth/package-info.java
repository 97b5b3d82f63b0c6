/**
 * What a lot is worth, when to stop, what looking is worth, and how such numbers held afterwards. Never
 * writes to the ledger.
 */
@NullMarked
package org.salvedge.worth;

import org.jspecify.annotations.NullMarked;
