/**
 * Pure functions over numbers: no I/O, no clock, no randomness that the caller did not pass in, and no television sets. Each
 * names the published source of its method.
 */
@NullMarked
package org.salvedge.stats;

import org.jspecify.annotations.NullMarked;
