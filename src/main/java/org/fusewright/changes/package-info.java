/** The trail of changes: who changed what, when, from what to what. It is only read here. */
@NullMarked
package org.fusewright.changes;

import org.jspecify.annotations.NullMarked;
