/** What people touch: parse, call one service, print, return the status. No computation. The only package that sees picocli. */
@NullMarked
package org.salvedge.cli;

import org.jspecify.annotations.NullMarked;
