package org.fusewright.core.catalog;

import java.util.List;

/**
 * The time-current gates of a device: at each percentage of its rating it opens after {@code minS}
 * at the earliest and {@code maxS} at the latest. An open end is 0 or positive infinity.
 */
public record TimeCurrent(List<Gate> gates) {

    /** Opening time at {@code percent} of the rating, in seconds. */
    public record Gate(double percent, double minS, double maxS) {

        public Gate {
            Require.positive("percent", percent);
            if (!(minS >= 0) || !(maxS >= minS)) {
                throw Require.refused("refused.gate", percent, minS, maxS);
            }
        }
    }

    public TimeCurrent {
        gates = List.copyOf(gates);
        if (gates.isEmpty()) {
            throw Require.refused("refused.no-gate");
        }
        for (int i = 1; i < gates.size(); i++) {
            if (gates.get(i).percent() <= gates.get(i - 1).percent()) {
                throw Require.refused("refused.gates-rise");
            }
        }
    }
}
