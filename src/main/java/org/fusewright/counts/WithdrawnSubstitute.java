package org.fusewright.counts;

import org.fusewright.core.count.AgreedSubstitute;

import java.time.Instant;

/** An agreement that a person took back. */
public record WithdrawnSubstitute(AgreedSubstitute agreed, String by, Instant at) {}
