/** What callers send about counts: requests, and kits from elsewhere as files. */
@NullMarked
package org.fusewright.counts.load;

import org.jspecify.annotations.NullMarked;
