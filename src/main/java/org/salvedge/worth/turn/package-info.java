/**
 * What a turn at the bench is expected to bring, out of the shop's own record, and after how many minutes to give up: one
 * answer for every screen that shows it.
 */
@NullMarked
package org.salvedge.worth.turn;

import org.jspecify.annotations.NullMarked;
