/**
 * The study that judges whether the month's review names what changed, on invented shops whose truth is known. Shares neither code
 * nor distributions with what it judges.
 */
@NullMarked
package org.salvedge.yield.study;

import org.jspecify.annotations.NullMarked;
