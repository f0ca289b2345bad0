/** Jobs and their revisions as rows. */
@NullMarked
package org.fusewright.jobs.store;

import org.jspecify.annotations.NullMarked;
