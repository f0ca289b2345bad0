/** Purchase orders and deliveries as rows. */
@NullMarked
package org.fusewright.orders.store;

import org.jspecify.annotations.NullMarked;
