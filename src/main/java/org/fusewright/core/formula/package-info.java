/**
 * Formulas as data: arithmetic over named values that evaluates and prints itself from the same
 * tree, so that what is read and what is computed cannot differ.
 */
@NullMarked
package org.fusewright.core.formula;

import org.jspecify.annotations.NullMarked;
