/** The interface of backups. */
@NullMarked
package org.fusewright.backups.web;

import org.jspecify.annotations.NullMarked;
