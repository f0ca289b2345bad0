package org.fusewright.core.sizing;

/**
 * What a level round lead gives to the still air and the room round it, per metre.
 *
 * <p>Natural convection by Churchill and Chu 1975 for a horizontal cylinder, Nu = (0.60 + 0.387
 * Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2 with air properties at the film temperature; air at
 * sea level, its viscosity and conductivity by Sutherland's laws, Pr 0.70. Radiation as a grey body
 * of emissivity 0.9 into a room as warm as the air. All of these from memory; the tests compare
 * them with tabled properties of air.
 *
 * <p>Not covered: wind, altitude, sun, a surface or neighbours close by.
 */
final class StillAir {

    static final double ZERO_CELSIUS_K = 273.15;

    private static final double SEA_LEVEL_PA = 101_325;
    private static final double GAS_CONSTANT_J_PER_KG_K = 287.05;
    private static final double GRAVITY_M_PER_S2 = 9.80665;
    private static final double PRANDTL = 0.70;
    private static final double EMISSIVITY = 0.9;
    private static final double STEFAN_BOLTZMANN_W_PER_M2_K4 = 5.670374419e-8;

    private static final double COLDEST_K = 170;
    private static final double STEP_K = 5;
    private static final int STEPS = 380;

    /** By film temperature: conductivity, and Nu's second term for 1 K and 1 m. */
    private static final double[] CONDUCTIVITY = new double[STEPS + 1];

    private static final double[] BUOYANCY = new double[STEPS + 1];

    static {
        double prandtlTerm = Math.pow(1 + Math.pow(0.559 / PRANDTL, 9 / 16.0), 8 / 27.0);
        for (int step = 0; step <= STEPS; step++) {
            double filmK = COLDEST_K + step * STEP_K;
            double viscosity = kinematicViscosityM2PerS(filmK);
            double rayleigh = GRAVITY_M_PER_S2 / filmK * PRANDTL / (viscosity * viscosity);
            CONDUCTIVITY[step] = conductivityWPerMK(filmK);
            BUOYANCY[step] = 0.387 * Math.pow(rayleigh, 1 / 6.0) / prandtlTerm;
        }
    }

    private StillAir() {}

    static double conductivityWPerMK(double airK) {
        return 0.0241 * Math.pow(airK / 273.15, 1.5) * (273.15 + 194) / (airK + 194);
    }

    static double kinematicViscosityM2PerS(double airK) {
        double viscosityPaS = 1.716e-5 * Math.pow(airK / 273.15, 1.5) * 383.55 / (airK + 110.4);
        return viscosityPaS * GAS_CONSTANT_J_PER_KG_K * airK / SEA_LEVEL_PA;
    }

    /** Heat that leaves a surface warmer than the air by some kelvins, in watts a metre. */
    static double lossWPerM(double outsideM, double airK, double warmerK) {
        return lossWPerM(outsideM, airK, warmerK, Math.pow(warmerK, 1 / 6.0));
    }

    /** The same, for a caller who has the sixth root of the difference already. */
    static double lossWPerM(double outsideM, double airK, double warmerK, double sixthRoot) {
        double position = Math.clamp((airK + warmerK / 2 - COLDEST_K) / STEP_K, 0, STEPS - 1e-9);
        int step = (int) position;
        double share = position - step;
        double conductivity =
                CONDUCTIVITY[step] + share * (CONDUCTIVITY[step + 1] - CONDUCTIVITY[step]);
        double buoyancy = BUOYANCY[step] + share * (BUOYANCY[step + 1] - BUOYANCY[step]);
        double rootNusselt = 0.60 + buoyancy * sixthRoot * Math.sqrt(outsideM);
        double surfaceK = airK + warmerK;
        double radiated =
                EMISSIVITY
                        * STEFAN_BOLTZMANN_W_PER_M2_K4
                        * (surfaceK * surfaceK + airK * airK)
                        * (surfaceK + airK)
                        * outsideM;
        return Math.PI * warmerK * (conductivity * rootNusselt * rootNusselt + radiated);
    }
}
