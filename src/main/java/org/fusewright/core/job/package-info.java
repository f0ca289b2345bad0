/**
 * The job as a customer describes it, the job as resolved against a catalog, and what is wrong with
 * a malformed one.
 */
@NullMarked
package org.fusewright.core.job;

import org.jspecify.annotations.NullMarked;
