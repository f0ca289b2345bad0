/** Jobs: kept with all their revisions, changed under a version, and planned into kits. */
@NullMarked
package org.fusewright.jobs;

import org.jspecify.annotations.NullMarked;
