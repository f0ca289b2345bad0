package org.fusewright.jobs;

/** There is no such job. */
public final class UnknownJobException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownJobException(long id) {
        super("no job " + id);
    }
}
