/** Reads the catalog from CSV files and names every error by file, line, column and value. */
@NullMarked
package org.fusewright.catalogs.load;

import org.jspecify.annotations.NullMarked;
