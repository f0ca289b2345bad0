/**
 * The papers of a kit as PDF: from the kit alone, without database, request or clock. Lengths on
 * paper are points.
 */
@NullMarked
package org.fusewright.papers;

import org.jspecify.annotations.NullMarked;
