/** Who gets in: the guards before every request, log-in, and the pages of people. */
@NullMarked
package org.fusewright.accounts.web;

import org.jspecify.annotations.NullMarked;
