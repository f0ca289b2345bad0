package org.fusewright.core.sizing;

import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;

/**
 * How hot a conductor runs: T2 = T1 + (TR - T1) sqrt(I2/Imax), by AC 43.13-1B 11-68 f. T1 is the
 * temperature around it, TR its class, Imax what it may carry there.
 *
 * <p>The physical law is the square of the current ratio, so the estimate lies above the truth for
 * every current below Imax: resistance and drop err on the safe side.
 */
final class ConductorTemperature {

    private ConductorTemperature() {}

    /** The conductor's temperature; its class where nothing may flow at all. */
    static Celsius estimate(
            Celsius ambient, Celsius classTemperature, Amperes current, Amperes allowed) {
        double riseC = classTemperature.value() - ambient.value();
        if (riseC <= 0) {
            return ambient;
        }
        if (allowed.value() <= 0) {
            return classTemperature;
        }
        return new Celsius(ambient.value() + riseC * Math.sqrt(current.value() / allowed.value()));
    }
}
