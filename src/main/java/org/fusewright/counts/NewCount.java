package org.fusewright.counts;

import org.fusewright.core.count.ExpectedBag;

import java.util.OptionalInt;

/**
 * A count to begin.
 *
 * @param revision of the job; empty for the newest
 * @param by who counts
 */
public record NewCount(long jobId, OptionalInt revision, ExpectedBag.Sets sets, String by) {}
