package org.fusewright.core.job;

/** Start-up current as a multiple of the running current, and how long it lasts. */
public record Inrush(double multiple, double ms) {

    public Inrush {
        if (!(multiple >= 1) || !(ms >= 0)) {
            throw new IllegalArgumentException("inrush " + multiple + " x for " + ms + " ms");
        }
    }
}
