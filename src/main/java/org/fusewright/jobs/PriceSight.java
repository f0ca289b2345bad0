package org.fusewright.jobs;

/** Whether prices may be seen by whoever asks right now. */
@FunctionalInterface
public interface PriceSight {
    boolean isOpen();
}
