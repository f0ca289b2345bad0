/** Orders: what is needed, the cheapest way to buy it, orders to suppliers, and deliveries. */
@NullMarked
package org.fusewright.orders;

import org.jspecify.annotations.NullMarked;
