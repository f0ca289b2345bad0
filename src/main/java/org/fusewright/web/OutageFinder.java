package org.fusewright.web;

import java.util.Optional;

/** Tells a failure for want of something from one of the program. */
@FunctionalInterface
public interface OutageFinder {
    Optional<Outage> find(Throwable failure);
}
