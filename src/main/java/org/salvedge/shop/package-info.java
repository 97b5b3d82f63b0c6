/**
 * The domain: lots, television sets, turns at the bench, exits, comebacks, money, codes and settings, and the rules that hold
 * for one set's history. Knows nothing of files, databases or screens.
 */
@NullMarked
package org.salvedge.shop;

import org.jspecify.annotations.NullMarked;
