/** The shop's catalog: what is in force, how it is imported, searched and shown. */
@NullMarked
package org.fusewright.catalogs;

import org.jspecify.annotations.NullMarked;
