package org.fusewright.jobs;

/** Another job has this reference already; nothing was done. */
public final class ReferenceTakenException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String reference;

    ReferenceTakenException(String reference) {
        super("reference taken");
        this.reference = reference;
    }

    public String reference() {
        return reference;
    }
}
