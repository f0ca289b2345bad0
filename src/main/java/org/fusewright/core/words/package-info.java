/**
 * Texts of the program, kept as what they say until somebody reads them in a language and units.
 */
@NullMarked
package org.fusewright.core.words;

import org.jspecify.annotations.NullMarked;
