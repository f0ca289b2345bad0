package org.fusewright.core.fitting;

/**
 * How many steps a search may still take. Counted, never timed, so that the same task always ends
 * with the same answer.
 */
final class Budget {

    private long left;

    Budget(long steps) {
        left = steps;
    }

    /** Takes a step; false when there is none left. */
    boolean step() {
        if (left <= 0) {
            return false;
        }
        left--;
        return true;
    }

    /** Takes several steps at once; false when there are not as many left. */
    boolean take(long steps) {
        left -= steps;
        if (left < 0) {
            left = 0;
            return false;
        }
        return true;
    }

    boolean isSpent() {
        return left <= 0;
    }

    /** A part of what is left, taken out of this budget. */
    Budget split(long steps) {
        long part = Math.min(steps, left);
        left -= part;
        return new Budget(part);
    }

    long left() {
        return left;
    }

    void giveBack(Budget part) {
        left += part.left;
        part.left = 0;
    }
}
