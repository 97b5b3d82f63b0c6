/**
 * The study that judges the lot estimate on invented shops whose truth is known: worlds, baselines, an oracle, scores. Shares
 * neither code nor distributions with what it judges, and talks to it only through {@link
 * org.salvedge.worth.study.Forecaster}.
 */
@NullMarked
package org.salvedge.worth.study;

import org.jspecify.annotations.NullMarked;
