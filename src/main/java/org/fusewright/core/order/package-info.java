/**
 * What must be bought and where: demand for each part, the cheapest cover of it by suppliers'
 * offers, and the purchase orders that come of it.
 */
@NullMarked
package org.fusewright.core.order;

import org.jspecify.annotations.NullMarked;
