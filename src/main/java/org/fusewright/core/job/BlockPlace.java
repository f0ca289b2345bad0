package org.fusewright.core.job;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where a device or relay is to sit.
 *
 * @param block names a block of the circuit's location; those that name the same one share it
 * @param part the block's part number; empty for any
 * @param position counted from 1, of a relay the first of its two; empty for anywhere in the block
 * @param fixed whether it must sit there; otherwise it does as long as that makes the blocks no
 *     dearer and no more
 */
public record BlockPlace(
        String block, Optional<String> part, OptionalInt position, boolean fixed) {}
