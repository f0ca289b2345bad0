/** Accounts: the people who may log in, and their passwords. */
@NullMarked
package org.fusewright.accounts;

import org.jspecify.annotations.NullMarked;
