package org.fusewright.core.fitting;

/** What can keep items out of blocks that would be cheaper. */
public enum Rule {
    /** A relay takes two neighbouring positions that the block lists as a pair. */
    RELAY_PAIR,
    /** A cap clears what stands below it. */
    CAP_CLEARANCE,
    /** A position carries no more than it may. */
    POSITION_CURRENT,
    /** All positions of a block together carry no more than it may. */
    BLOCK_CURRENT,
    /** Items with a fixed place sit there. */
    FIXED_PLACES,
    /** So many positions stay free as are asked for. */
    SPARE_POSITIONS,
    /** Items share a block only with those of their own location. */
    LOCATIONS,
    /** Each rule alone could be kept, all of them at once cannot. */
    ALL_AT_ONCE
}
