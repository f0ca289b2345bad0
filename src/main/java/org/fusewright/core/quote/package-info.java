/** What a kit is sold for: parts, bench work, shipping and tax, in variants side by side. */
@NullMarked
package org.fusewright.core.quote;

import org.jspecify.annotations.NullMarked;
