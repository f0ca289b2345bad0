/** Keeps the catalog in force in the database, replaced whole or not at all. */
@NullMarked
package org.fusewright.catalogs.store;

import org.jspecify.annotations.NullMarked;
