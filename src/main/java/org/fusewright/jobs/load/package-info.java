/** Reading a job document: strict, complete in its complaints, with every default filled in. */
@NullMarked
package org.fusewright.jobs.load;

import org.jspecify.annotations.NullMarked;
