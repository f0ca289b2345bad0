package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogError;
import org.fusewright.catalogs.CatalogImport;

import java.util.List;
import java.util.Optional;

/**
 * The import page: the form, and below it how the last try went.
 *
 * @param version the catalog in force, which an import replaces
 * @param dryRun whether the result is what would be
 * @param complaint why nothing was imported, when no file is to blame
 */
public record ImportView(
        String version,
        boolean dryRun,
        Optional<CatalogImport> result,
        List<CatalogError> errors,
        String complaint) {

    static ImportView empty(String version) {
        return new ImportView(version, false, Optional.empty(), List.of(), "");
    }

    static ImportView of(String version, boolean dryRun, CatalogImport result) {
        return new ImportView(version, dryRun, Optional.of(result), List.of(), "");
    }

    static ImportView rejected(String version, List<CatalogError> errors) {
        return new ImportView(version, false, Optional.empty(), errors, "");
    }

    static ImportView stale(String version, String complaint) {
        return new ImportView(version, false, Optional.empty(), List.of(), complaint);
    }
}
