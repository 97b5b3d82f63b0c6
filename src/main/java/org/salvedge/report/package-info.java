/**
 * Workbooks, tables and charts out of plain row records; nothing comes in here. Never
 * computes a figure of its own.
 */
@NullMarked
package org.salvedge.report;

import org.jspecify.annotations.NullMarked;
