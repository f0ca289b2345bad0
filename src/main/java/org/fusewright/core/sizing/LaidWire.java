package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Amperes;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.sizing.ShortCircuitWithstand.Insulation;
import org.fusewright.core.sizing.TerminalChoice.CavityEnd;

/**
 * A wire where it will lie: what it may carry there, how hot it runs, what it resists.
 *
 * @param tabledA ampacity of the regulation's table at the surrounding temperature, alone
 * @param allowedA what it may carry at the surrounding temperature and in its bundle: its ampacity
 *     by heat balance, but not over 5 % more than the more careful of the published tables gives
 * @param microsPerM price of a metre in millionths of the job's currency
 * @param end what is stocked to end it in a sealed cavity
 */
record LaidWire(
        Wire wire,
        Celsius ambient,
        double tabledA,
        double allowedA,
        WireHeat heat,
        Insulation insulation,
        long microsPerM,
        CavityEnd end) {

    /** By how much the heat balance may be more hopeful than the tables. */
    static final double ABOVE_TABLES = 1.05;

    static LaidWire of(Wire wire, Surroundings surroundings, long microsPerM, CavityEnd end) {
        WireHeat heat = WireHeat.of(wire, surroundings);
        Celsius classTemperature = new Celsius(wire.classC());
        return new LaidWire(
                wire,
                surroundings.ambient(),
                Ampacity.tabledA(wire.copperMm2(), classTemperature)
                        * Ampacity.temperatureFactor(classTemperature, surroundings.ambient()),
                Math.min(
                        heat.ampacityA(),
                        ABOVE_TABLES
                                * Ampacity.conservativeA(wire.copperMm2(), classTemperature)
                                * Ampacity.temperatureFactor(
                                        classTemperature, surroundings.ambient())
                                * Ampacity.bundleFactor(surroundings.bundledLeads())),
                heat,
                Insulation.of(wire),
                microsPerM,
                end);
    }

    /** A wire of the same make in another colour. */
    LaidWire inColour(Wire other, long otherMicrosPerM) {
        return new LaidWire(
                other, ambient, tabledA, allowedA, heat, insulation, otherMicrosPerM, end);
    }

    double areaMm2() {
        return wire.copperMm2();
    }

    boolean fitsCavity() {
        return end.fits();
    }

    /** Whether it may end in a sealed cavity with this current. */
    boolean servesCavity(double currentA) {
        return fitsCavity() && terminalA() >= currentA;
    }

    /** Whether the device keeps this wire below its class for good. */
    boolean isProtectedBy(double ratingA) {
        return ratingA <= allowedA;
    }

    /** How hot the conductor runs at a current. */
    Celsius temperatureAt(double currentA) {
        return ConductorTemperature.estimate(
                ambient, new Celsius(wire.classC()), new Amperes(currentA), new Amperes(allowedA));
    }

    /** Resistance at 20 C, in ohms: the least that it has in service. */
    double coldOhm(double routeM) {
        return wire.milliohmPerM() * routeM / 1000;
    }

    /** Resistance while a current runs, in ohms. */
    double warmOhm(double routeM, double currentA) {
        return coldOhm(routeM) * Conductor.temperatureFactor(temperatureAt(currentA));
    }

    double dropV(double routeM, double currentA) {
        return warmOhm(routeM, currentA) * currentA;
    }

    /** The least that a terminal on it carries, in amperes; 0 when none fits. */
    double terminalA() {
        return end.terminalA();
    }

    /** Resistance of crimp and contact at a cavity, in ohms; 0 when no terminal fits. */
    double terminalOhm() {
        return end.terminalOhm();
    }
}
