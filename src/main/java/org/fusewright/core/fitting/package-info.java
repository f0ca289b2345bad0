/** The exact search for the cheapest set of blocks that holds every device and relay. */
@NullMarked
package org.fusewright.core.fitting;

import org.jspecify.annotations.NullMarked;
