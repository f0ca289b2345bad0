package org.fusewright.jobs;

/** The job was changed by somebody else in the meantime; nothing was done. */
public final class StaleJobException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StaleJobException(long id) {
        super("job " + id + " was changed in the meantime");
    }
}
