/**
 * The bytes of a seller's file become sheets of located cells. Knows every format that is read and every limit that protects
 * memory and time; knows nothing of television sets.
 */
@NullMarked
package org.salvedge.manifest.grid;

import org.jspecify.annotations.NullMarked;
