/** Quotes: made of jobs, sent, answered, and frozen from the moment they are sent. */
@NullMarked
package org.fusewright.quotes;

import org.jspecify.annotations.NullMarked;
