/** The kit: cavities, parts, cut list, totals and checks, planned from a job and a catalog. */
@NullMarked
package org.fusewright.core.kit;

import org.jspecify.annotations.NullMarked;
