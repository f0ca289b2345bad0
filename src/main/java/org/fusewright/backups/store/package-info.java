/** The rows of the whole database as a file. */
@NullMarked
package org.fusewright.backups.store;

import org.jspecify.annotations.NullMarked;
