package org.fusewright.jobs.web;

/** A change was stopped before it was kept. */
final class StoppedEditException extends RuntimeException {
    StoppedEditException() {
        super("stopped");
    }
}
