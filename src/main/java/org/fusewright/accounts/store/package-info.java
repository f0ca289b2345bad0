/** The rows of accounts. */
@NullMarked
package org.fusewright.accounts.store;

import org.jspecify.annotations.NullMarked;
