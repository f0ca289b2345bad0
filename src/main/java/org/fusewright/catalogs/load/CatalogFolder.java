package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogRejected;

import java.nio.file.Path;

/** A folder with the CSV files of a catalog. */
public final class CatalogFolder {

    private CatalogFolder() {}

    /**
     * @throws CatalogRejected with every error in the files
     */
    public static CatalogContent read(Path folder) {
        return CatalogReader.read(CatalogFiles.ofFolder(folder));
    }
}
