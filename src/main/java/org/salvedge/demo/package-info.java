/**
 * The invented shop that a newcomer plays with: makers, models, suppliers and people that do not exist, two years of their
 * dealings out of a seeded generator. Writes nothing itself.
 */
@NullMarked
package org.salvedge.demo;

import org.jspecify.annotations.NullMarked;
