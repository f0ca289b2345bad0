package org.fusewright.core.sizing;

import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.sizing.Missed.Reason;
import org.jspecify.annotations.Nullable;

/** What a lead between cavities or splices beside a block must do by itself. */
final class Jumpers {

    private final Loom loom;
    private final Protection protection;

    Jumpers(Loom loom, Protection protection) {
        this.loom = loom;
        this.protection = protection;
    }

    /**
     * Nothing when the wire fits a cavity, its terminal carries the current and no overload harms.
     */
    @Nullable Missed missedBy(LaidWire wire, double currentA) {
        if (!wire.fitsCavity()) {
            return new Missed(Reason.FITS_NO_TERMINAL, wire, 0);
        }
        return wire.servesCavity(currentA)
                ? protection.missedInOverload(wire)
                : new Missed(Reason.TERMINAL_TOO_WEAK, wire, wire.terminalA());
    }

    /** The cheapest that does all that, else the thickest that fits a cavity, else the thickest. */
    LaidWire standIn(LaidWire[] wires, Millimetres cut, int cavityEnds, double currentA) {
        @Nullable LaidWire best = null;
        @Nullable LaidWire thickest = null;
        for (LaidWire wire : wires) {
            if (!wire.fitsCavity()) {
                continue;
            }
            thickest = wire;
            if ((best == null
                            || loom.micros(wire, cut, cavityEnds)
                                    < loom.micros(best, cut, cavityEnds))
                    && missedBy(wire, currentA) == null) {
                best = wire;
            }
        }
        if (best != null) {
            return best;
        }
        return thickest == null ? wires[wires.length - 1] : thickest;
    }
}
