/** Counts as rows. */
@NullMarked
package org.fusewright.counts.store;

import org.jspecify.annotations.NullMarked;
