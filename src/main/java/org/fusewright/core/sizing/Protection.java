package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.Missed.Reason;
import org.jspecify.annotations.Nullable;

/** What stands before a circuit's leads, and which wires it keeps whole. */
final class Protection {

    private final Loom loom;
    private final Device device;
    private final TimeCurrentBand band;
    private final double highestA;
    private final Supply supply;
    private final double clearsFromA;
    private double mostLetThroughA2s = Double.NaN;

    /**
     * @param highestA prospective short-circuit current at the device
     */
    Protection(Loom loom, Device device, double highestA) {
        this.loom = loom;
        this.device = device;
        this.band = loom.bandInBlock(device);
        this.highestA = highestA;
        this.supply = loom.job().supply();
        this.clearsFromA = band.clearsFromA();
    }

    Device device() {
        return device;
    }

    double highestA() {
        return highestA;
    }

    /** Nothing when the device keeps the wire whole in an overload, and in a short at a far end. */
    @Nullable Missed missedBy(LaidWire wire, double currentA, double farOhm) {
        @Nullable Missed overload = missedInOverload(wire);
        return overload == null ? missedInShort(wire, currentA, farOhm) : overload;
    }

    @Nullable Missed missedInOverload(LaidWire wire) {
        if (!wire.isProtectedBy(device.ratingA())) {
            return new Missed(Reason.NOT_PROTECTED, wire, wire.allowedA());
        }
        double hottestC = loom.worstOverload(device, band, wire, highestA).conductorC();
        return hottestC <= OverloadProtection.shortTermC(wire)
                ? null
                : new Missed(Reason.TOO_HOT_BEFORE_OPENING, wire, hottestC);
    }

    @Nullable Missed missedInShort(LaidWire wire, double currentA, double farOhm) {
        double lowestA = FaultCurrent.lowestA(supply, new Ohms(farOhm));
        if (lowestA < clearsFromA) {
            return new Missed(Reason.SHORT_NOT_CLEARED, wire, lowestA);
        }
        double survivesA2s = ShortCircuitWithstand.survivesA2s(wire, currentA);
        return mostLetThroughA2s() <= survivesA2s || letThroughA2s(lowestA) <= survivesA2s
                ? null
                : new Missed(Reason.BURNS_IN_A_SHORT, wire, 0);
    }

    /** In any short that is cleared in time; worked out when a wire first asks. */
    private double mostLetThroughA2s() {
        if (Double.isNaN(mostLetThroughA2s)) {
            mostLetThroughA2s = letThroughA2s(clearsFromA);
        }
        return mostLetThroughA2s;
    }

    /** In any short from this current up to the one at the device. */
    private double letThroughA2s(double lowestA) {
        return band.letThroughA2s(lowestA, highestA);
    }
}
