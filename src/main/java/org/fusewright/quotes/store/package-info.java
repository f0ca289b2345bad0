/** Quotes, their revisions and what accepted ones need, as rows. */
@NullMarked
package org.fusewright.quotes.store;

import org.jspecify.annotations.NullMarked;
