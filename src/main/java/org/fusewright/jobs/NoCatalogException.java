package org.fusewright.jobs;

/** There is no catalog yet to plan kits from. */
public final class NoCatalogException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NoCatalogException() {
        super("no catalog has been imported");
    }
}
