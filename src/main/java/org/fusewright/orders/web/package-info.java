/** The pages and the interface of orders. */
@NullMarked
package org.fusewright.orders.web;

import org.jspecify.annotations.NullMarked;
