/** The trail of changes as documents and pages. */
@NullMarked
package org.fusewright.changes.web;

import org.jspecify.annotations.NullMarked;
