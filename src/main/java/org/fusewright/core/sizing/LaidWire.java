package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;
import org.jspecify.annotations.Nullable;

import java.util.List;
import java.util.Optional;

/**
 * A wire where it will lie: what it may carry there, how hot it runs, what it resists.
 *
 * @param tabledA ampacity at the surrounding temperature, alone
 * @param allowedA ampacity at the surrounding temperature and in its bundle
 * @param terminals what is stocked to end it in a sealed cavity, cheapest first; empty when nothing
 *     fits
 */
record LaidWire(
        Wire wire, Celsius ambient, double tabledA, double allowedA, List<Terminal> terminals) {

    static LaidWire of(Wire wire, Surroundings surroundings, List<Terminal> terminals) {
        Celsius classTemperature = new Celsius(wire.classC());
        double tabled =
                Ampacity.tabledA(wire.copperMm2(), classTemperature)
                        * Ampacity.temperatureFactor(classTemperature, surroundings.ambient());
        return new LaidWire(
                wire,
                surroundings.ambient(),
                tabled,
                tabled * Ampacity.bundleFactor(surroundings.bundledLeads()),
                terminals);
    }

    double areaMm2() {
        return wire.copperMm2();
    }

    boolean fitsCavity() {
        return !terminals.isEmpty();
    }

    /** Whether the device keeps this wire below its class for good. */
    boolean isProtectedBy(double ratingA) {
        return ratingA <= allowedA;
    }

    /** How hot the conductor runs at a current, in degrees Celsius. */
    double temperatureC(double currentA) {
        return ConductorTemperature.estimateC(
                ambient, new Celsius(wire.classC()), new Amperes(currentA), new Amperes(allowedA));
    }

    /** Resistance at 20 C, in ohms: the least that it has in service. */
    double coldOhm(double routeM) {
        return wire.milliohmPerM() * routeM / 1000;
    }

    /** Resistance while a current runs, in ohms. */
    double warmOhm(double routeM, double currentA) {
        return coldOhm(routeM) * Conductor.factorAtC(temperatureC(currentA));
    }

    double dropV(double routeM, double currentA) {
        return warmOhm(routeM, currentA) * currentA;
    }

    /** The cheapest terminal that carries the current, else the one that carries most. */
    Optional<Terminal> findTerminal(double currentA) {
        @Nullable Terminal strongest = null;
        for (Terminal terminal : terminals) {
            if (terminal.maxCurrentA() >= currentA) {
                return Optional.of(terminal);
            }
            if (strongest == null || terminal.maxCurrentA() > strongest.maxCurrentA()) {
                strongest = terminal;
            }
        }
        return Optional.ofNullable(strongest);
    }

    /** Resistance of crimp and contact at a cavity, in ohms; none when no terminal fits. */
    double terminalOhm(double currentA) {
        return findTerminal(currentA).map(t -> t.contactMilliohm() / 1000).orElse(0.0);
    }
}
