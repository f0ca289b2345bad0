/** The rows of the trail, as the database's triggers write them. */
@NullMarked
package org.fusewright.changes.store;

import org.jspecify.annotations.NullMarked;
