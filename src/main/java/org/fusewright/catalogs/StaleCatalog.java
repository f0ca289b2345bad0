package org.fusewright.catalogs;

import java.util.Optional;

/** Another import came first, so this one was made against a catalog that is in force no more. */
public class StaleCatalog extends RuntimeException {

    private static final long serialVersionUID = 1;

    StaleCatalog(Optional<String> inForce) {
        super(
                "The catalog has changed meanwhile; in force is "
                        + inForce.map(version -> "version " + version).orElse("none")
                        + ". Nothing was imported.");
    }
}
