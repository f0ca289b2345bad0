/**
 * The service as a whole: its start, and below it the core, the features, the papers and the web.
 */
@NullMarked
package org.fusewright;

import org.jspecify.annotations.NullMarked;
