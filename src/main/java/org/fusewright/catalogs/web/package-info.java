/** The catalog's pages and interface. */
@NullMarked
package org.fusewright.catalogs.web;

import org.jspecify.annotations.NullMarked;
