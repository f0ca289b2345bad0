/** Checking a real bag against its kit: by piece, by what may stand in, and by weight. */
@NullMarked
package org.fusewright.core.count;

import org.jspecify.annotations.NullMarked;
