/**
 * A seller's spreadsheet becomes typed sets with located problems: bytes, grid, header, fields. Trusts nothing in the file and never
 * knows the ledger.
 */
@NullMarked
package org.salvedge.manifest;

import org.jspecify.annotations.NullMarked;
