/** What all pages and interfaces share: the page frame, errors, formatting, limits. */
@NullMarked
package org.fusewright.web;

import org.jspecify.annotations.NullMarked;
