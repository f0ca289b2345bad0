/** Counts as an API and as pages. */
@NullMarked
package org.fusewright.counts.web;

import org.jspecify.annotations.NullMarked;
