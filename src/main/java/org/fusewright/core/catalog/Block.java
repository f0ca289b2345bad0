package org.fusewright.core.catalog;

import java.util.List;

/**
 * A sealed housing with n positions in a row and two cavities a position.
 *
 * @param terminalFamily the family of terminals, seals and plugs that its cavities take
 * @param relayPairs pairs of neighbouring positions that hold a relay instead of two devices
 * @param maxTotalA most current through all positions together
 * @param maxPositionA most current through one position
 * @param pitchMm distance from one position to the next, for drawings
 */
public record Block(
        Item item,
        String terminalFamily,
        int positions,
        List<RelayPair> relayPairs,
        double maxTotalA,
        double maxPositionA,
        double pitchMm)
        implements Part {

    /** Two neighbouring positions, counted from 1, that may hold one relay. */
    public record RelayPair(int first) {

        public int second() {
            return first + 1;
        }
    }

    public Block {
        if (positions < 1 || positions > 24) {
            throw new IllegalArgumentException("positions must be 1 to 24, not " + positions);
        }
        Require.positive("maxTotalA", maxTotalA);
        Require.positive("maxPositionA", maxPositionA);
        Require.positive("pitchMm", pitchMm);
        relayPairs = List.copyOf(relayPairs);
        int free = 1;
        for (RelayPair pair : relayPairs) {
            if (pair.first() < free || pair.second() > positions) {
                throw Require.refused("refused.relay-pairs", positions);
            }
            free = pair.second() + 1;
        }
    }

    public int cavities() {
        return 2 * positions;
    }
}
