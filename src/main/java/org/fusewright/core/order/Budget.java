package org.fusewright.core.order;

/** How many steps a search may still take; counted, since the core has no clock. */
final class Budget {

    private long left;

    Budget(long steps) {
        left = steps;
    }

    void spend(long steps) {
        left -= steps;
    }

    boolean isSpent() {
        return left <= 0;
    }

    long left() {
        return left;
    }
}
