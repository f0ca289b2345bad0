/** Wiring of the service, and the embedded database of a shop that runs no server of its own. */
@NullMarked
package org.fusewright.setup;

import org.jspecify.annotations.NullMarked;
