/**
 * What sellers' words mean, in English, German, French and Spanish: headings of columns, totals and headings of rows, goods, and
 * the symptoms they claim. The words stand in tables among the resources; here is how they are matched.
 */
@NullMarked
package org.salvedge.manifest.words;

import org.jspecify.annotations.NullMarked;
