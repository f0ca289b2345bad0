/** Backups: all that the service keeps, in one file, and back again. */
@NullMarked
package org.fusewright.backups;

import org.jspecify.annotations.NullMarked;
