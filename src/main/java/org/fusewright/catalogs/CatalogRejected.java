package org.fusewright.catalogs;

import java.util.List;

/** Catalog files that cannot be imported as they are; nothing was changed. */
public class CatalogRejected extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient List<CatalogError> errors;

    public CatalogRejected(List<CatalogError> errors) {
        super(errors.size() + " errors in the catalog files, first: " + words(errors.getFirst()));
        this.errors = List.copyOf(errors);
    }

    private static String words(CatalogError error) {
        return "%s, line %d, %s \"%s\": %s"
                .formatted(
                        error.file(),
                        error.line(),
                        error.column(),
                        error.value(),
                        error.detail().english());
    }

    /** All errors, by file and line. */
    public List<CatalogError> errors() {
        return errors;
    }
}
