package org.fusewright.core.job;

/**
 * A place on the machine that has blocks of its own.
 *
 * @param fromFeedM what a feed needs on top of its length to reach this place
 */
public record Location(String name, double fromFeedM) {}
