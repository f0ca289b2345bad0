/** What every kit promises to outsiders, recomputed from the kit document alone. */
@NullMarked
package org.fusewright.contract;

import org.jspecify.annotations.NullMarked;
