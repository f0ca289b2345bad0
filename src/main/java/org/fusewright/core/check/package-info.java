/**
 * The words of explanation: what was checked, against which limit, on which basis, with which
 * verdict.
 */
@NullMarked
package org.fusewright.core.check;

import org.jspecify.annotations.NullMarked;
