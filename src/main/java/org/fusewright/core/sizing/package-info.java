/** Currents, devices, leads and voltage drops: one file for each rule, its source on top. */
@NullMarked
package org.fusewright.core.sizing;

import org.jspecify.annotations.NullMarked;
