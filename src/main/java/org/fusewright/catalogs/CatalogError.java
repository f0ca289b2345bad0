package org.fusewright.catalogs;

import org.fusewright.core.words.Text;

/**
 * One thing that keeps catalog files from being imported.
 *
 * @param file the file's name
 * @param line counted from 1, the line on which the row starts; 0 when it concerns the whole file
 * @param column the column's name; empty when it concerns the whole row
 * @param value what stands there
 * @param detail what is allowed
 */
public record CatalogError(String file, long line, String column, String value, Text detail) {}
