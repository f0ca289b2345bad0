package org.fusewright.core.fitting;

import java.util.Map;

/**
 * Blocks that would cost less than those of the arrangement, but do not do.
 *
 * @param blocks how many of each form
 * @param costMicros with the plugs of their empty positions
 * @param rule that keeps the items out of them
 */
public record Rejected(Map<BlockForm, Integer> blocks, long costMicros, Rule rule) {}
