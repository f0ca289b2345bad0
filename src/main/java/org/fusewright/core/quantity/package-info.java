/** Physical quantities and standard series: small typed values that parse, print and validate. */
@NullMarked
package org.fusewright.core.quantity;

import org.jspecify.annotations.NullMarked;
