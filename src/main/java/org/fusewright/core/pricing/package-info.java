/**
 * Prices of parts: choosing an offer, rounding to a currency's minor unit, covering a need by bags
 * and pieces.
 */
@NullMarked
package org.fusewright.core.pricing;

import org.jspecify.annotations.NullMarked;
