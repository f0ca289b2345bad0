/** Why a figure of a kit is what it is: its formula with its own values, worked out when asked. */
@NullMarked
package org.fusewright.core.why;

import org.jspecify.annotations.NullMarked;
