/** The pages and the API of jobs and kits. */
@NullMarked
package org.fusewright.jobs.web;

import org.jspecify.annotations.NullMarked;
