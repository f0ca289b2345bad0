package org.fusewright.core.fitting;

/** How much of a block an item takes. */
public enum Width {
    /** One position: a device. */
    POSITION(1),
    /** Two neighbouring positions that the block lists as a relay pair: a relay. */
    RELAY_PAIR(2);

    private final int positions;

    Width(int positions) {
        this.positions = positions;
    }

    public int positions() {
        return positions;
    }
}
