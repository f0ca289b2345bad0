/** Quotes for programs (API) and people (pages). */
@NullMarked
package org.fusewright.quotes.web;

import org.jspecify.annotations.NullMarked;
