/** The part kinds and the immutable catalog that holds them, with offers and a content version. */
@NullMarked
package org.fusewright.core.catalog;

import org.jspecify.annotations.NullMarked;
