package org.fusewright.core.sizing;

import java.util.function.DoubleUnaryOperator;

/**
 * The physics of a warm lead written down a second time, slowly and without tables: Churchill and
 * Chu, grey radiation, wall resistance, copper. Every root is found by halving. It shares no code
 * with what it is compared to, and takes a wall's resistivity and heat capacity as given.
 */
record LeadByHand(
        double copperMm2,
        double outsideMm,
        double milliohmPerM,
        double classC,
        double wallKMPerW,
        double wallJPerKMm3) {

    private static final double KELVIN = 273.15;

    /** Copper at 70 % fill, as the dimension sheets of ISO 6722 have it on average. */
    double conductorMm() {
        return 2 * Math.sqrt(copperMm2 / 0.70 / Math.PI);
    }

    double wallResistance() {
        return wallKMPerW * Math.log(outsideMm / conductorMm()) / (2 * Math.PI);
    }

    double ohmPerM(double conductorC) {
        return milliohmPerM * 1e-3 * (1 + 0.00393 * (conductorC - 20));
    }

    /** Heat from surface to room, W/m. */
    double surfaceLoss(double surfaceC, double airC) {
        double diameter = outsideMm * 1e-3;
        double film = (surfaceC + airC) / 2 + KELVIN;
        double conductivity = 0.0241 * Math.pow(film / 273.15, 1.5) * 467.15 / (film + 194);
        double dynamic = 1.716e-5 * Math.pow(film / 273.15, 1.5) * 383.55 / (film + 110.4);
        double density = 101325 / (287.05 * film);
        double kinematic = dynamic / density;
        double prandtl = 0.70;
        double diffusivity = kinematic / prandtl;
        double rayleigh =
                9.80665
                        * (surfaceC - airC)
                        * Math.pow(diameter, 3)
                        / (film * kinematic * diffusivity);
        double shape = Math.pow(1 + Math.pow(0.559 / prandtl, 0.5625), 8.0 / 27);
        double nusselt = Math.pow(0.60 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / shape, 2);
        double convected = Math.PI * conductivity * nusselt * (surfaceC - airC);
        double radiated =
                0.9
                        * 5.670374419e-8
                        * Math.PI
                        * diameter
                        * (Math.pow(surfaceC + KELVIN, 4) - Math.pow(airC + KELVIN, 4));
        return convected + radiated;
    }

    double surfaceC(double conductorC, double airC) {
        if (conductorC <= airC) {
            return airC;
        }
        return halved(
                airC,
                conductorC,
                surface -> surfaceLoss(surface, airC) - (conductorC - surface) / wallResistance());
    }

    double loss(double conductorC, double airC) {
        return surfaceLoss(surfaceC(conductorC, airC), airC);
    }

    double ampacityA(double airC) {
        return Math.sqrt(loss(classC, airC) / ohmPerM(classC));
    }

    double steadyC(double currentA, double airC) {
        return halved(
                airC,
                1084.6,
                conductor -> loss(conductor, airC) - currentA * currentA * ohmPerM(conductor));
    }

    /** Air that leaves this lead so much of its ampacity. */
    double bundleAirC(double ambientC, double share) {
        double wanted = share * ampacityA(ambientC);
        return share == 1
                ? ambientC
                : halved(ambientC, classC - 1e-6, air -> wanted - ampacityA(air));
    }

    double copperHeat() {
        return 3.45e6 * copperMm2 * 1e-6;
    }

    double wallHeat() {
        double ring = Math.PI / 4 * (Math.pow(outsideMm, 2) - Math.pow(conductorMm(), 2));
        return 0.75 * wallJPerKMm3 * 1000 * ring;
    }

    /** What counts at one current: copper, and the wall as far as heat gets into it in time. */
    double heat(double currentA, double airC) {
        double hotC = Math.max(classC, airC);
        double follows = (surfaceC(hotC + 1, airC) - surfaceC(hotC - 1, airC)) / 2;
        double ratio = Math.pow(outsideMm / conductorMm(), 2);
        double inner = 1 / Math.log(ratio) - 1 / (ratio - 1);
        double seconds = copperHeat() * 25 / (currentA * currentA * ohmPerM(classC + 25));
        double entered = seconds / (seconds + wallResistance() * wallHeat() / 2);
        return copperHeat() + entered * wallHeat() * (inner + (1 - inner) * follows);
    }

    /** Where a rising function crosses zero. */
    private static double halved(double low, double high, DoubleUnaryOperator rising) {
        double from = low;
        double to = high;
        for (int round = 0; round < 60; round++) {
            double middle = (from + to) / 2;
            if (rising.applyAsDouble(middle) < 0) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return (from + to) / 2;
    }
}
