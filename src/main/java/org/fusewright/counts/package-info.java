/** Checking bags against their design, at the bench or from a file. */
@NullMarked
package org.fusewright.counts;

import org.jspecify.annotations.NullMarked;
