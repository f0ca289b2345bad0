package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

import java.util.List;
import java.util.Locale;

/**
 * Whether a conductor survives the energy that its device lets through: I2t <= k2 S2, with k =
 * sqrt(Qc (b + 20)/rho20 x ln((b + tf)/(b + ti))) by IEC 60364-4-43 and 60364-5-54 (copper b 234.5
 * K, Qc 3.45e-3 J/(K mm3), rho20 17.241e-6 ohm mm). End temperatures 160 C for PVC, 250 C for XLPE;
 * start 70 C and 90 C, which gives 115 and 143, or the conductor's own when it runs hotter. What is
 * neither counts as PVC, the lowest.
 *
 * <p>A simple method that errs on the safe side: no heat leaves the conductor, every place along
 * the lead is taken to see the worst current between its far end and the device, and the device
 * takes its latest time. Not covered: currents that the device carries for over 5 s ({@link
 * WorstOverload} answers for those), repeated closing on the same short by an auto-reset device,
 * terminals and splices.
 */
final class ShortCircuitWithstand {

    /** The method holds for 5 s at most. */
    static final double LONGEST_S = 5;

    /** Where copper melts; what would come out above is not worth telling apart. */
    static final double COPPER_MELTS_C = 1083;

    private static final Basis BASIS = Basis.of("basis.short-circuit-withstand");

    private static final double BETA_K = 234.5;
    private static final double HEAT_J_PER_K_MM3 = 3.45e-3;
    private static final double RHO_20_OHM_MM = 17.241e-6;

    /** K2 of IEC 60949, which prints K = 226 for copper. */
    private static final double MATERIAL_A2S_PER_MM4 =
            HEAT_J_PER_K_MM3 * (BETA_K + 20) / RHO_20_OHM_MM;

    /** An insulation's usual running temperature, and the one that it survives once. */
    enum Insulation {
        PVC(70, 160),
        CROSS_LINKED(90, 250);

        private final double runningC;
        private final double survivesC;
        private final double usualK;

        Insulation(double runningC, double survivesC) {
            this.runningC = runningC;
            this.survivesC = survivesC;
            this.usualK = k(runningC, survivesC);
        }

        static Insulation of(Wire wire) {
            String name = wire.insulation().toUpperCase(Locale.ROOT);
            return name.startsWith("XL") || name.startsWith("EPR") ? CROSS_LINKED : PVC;
        }
    }

    private ShortCircuitWithstand() {}

    /**
     * The constant k in A s^0.5/mm2 between two temperatures; 0 when there is no room to heat up.
     */
    static double k(double startC, double endC) {
        if (startC >= endC) {
            return 0;
        }
        return Math.sqrt(MATERIAL_A2S_PER_MM4 * Math.log((BETA_K + endC) / (BETA_K + startC)));
    }

    /** The constant k of a wire that carries a current when the short comes. */
    static double kOf(LaidWire laid, double currentA) {
        Insulation insulation = laid.insulation();
        double runsC = laid.temperatureAt(currentA).value();
        return runsC <= insulation.runningC ? insulation.usualK : k(runsC, insulation.survivesC);
    }

    private static double startC(LaidWire laid, double currentA) {
        return Math.max(laid.insulation().runningC, laid.temperatureAt(currentA).value());
    }

    /**
     * How hot a wire that carries a current gets by a short's energy, no heat leaving it: the same
     * law solved for tf, as IEC 60949 has it, tf = (b + ti) exp(I2t/(K2 S2)) - b. Never more than
     * {@link #COPPER_MELTS_C}.
     */
    static double endC(LaidWire laid, double currentA, double energyA2s) {
        double areaMm2 = laid.areaMm2();
        double exponent = energyA2s / (MATERIAL_A2S_PER_MM4 * areaMm2 * areaMm2);
        double endC = (BETA_K + startC(laid, currentA)) * Math.exp(exponent) - BETA_K;
        return Math.min(endC, COPPER_MELTS_C);
    }

    /** The most I2t that a wire survives, in A2s. */
    static double survivesA2s(LaidWire laid, double currentA) {
        double root = kOf(laid, currentA) * laid.areaMm2();
        return root * root;
    }

    /** The conductor temperature that a wire survives once. */
    static double survivesC(LaidWire laid) {
        return laid.insulation().survivesC;
    }

    /**
     * The copper that the worst short between far end and device asks for, against that of the lead
     * that comes nearest to it.
     *
     * @param leads all behind the device; one at least
     */
    static Check check(
            Subject subject, List<ProtectedLead> leads, TimeCurrentBand band, Span span) {
        double energyA2s = band.letThroughA2s(span.lowestA(), span.highestA());
        ProtectedLead weakest = leads.getFirst();
        double neededMm2 = neededMm2(weakest, energyA2s);
        for (ProtectedLead lead : leads) {
            double leadNeedsMm2 = neededMm2(lead, energyA2s);
            if (lead.laid().areaMm2() * neededMm2 < weakest.laid().areaMm2() * leadNeedsMm2) {
                weakest = lead;
                neededMm2 = leadNeedsMm2;
            }
        }
        boolean survives = weakest.laid().areaMm2() >= neededMm2;
        Phrase says =
                Phrase.of(
                        survives
                                ? "short-circuit-withstand.survives"
                                : "short-circuit-withstand.burns",
                        weakest.named(),
                        Amount.area(neededMm2));
        return Check.atLeast(
                CheckCode.SHORT_CIRCUIT_WITHSTAND,
                subject,
                new Measured(weakest.laid().areaMm2(), neededMm2, "mm2"),
                Verdict.FAIL,
                says,
                BASIS);
    }

    /** Prospective currents at the far end and at the device. */
    record Span(double lowestA, double highestA) {}

    /**
     * The copper that an energy asks for; of a wire with no room to heat up, more than there is.
     */
    private static double neededMm2(ProtectedLead lead, double energyA2s) {
        double k = kOf(lead.laid(), lead.currentA());
        return k > 0 ? Math.sqrt(energyA2s) / k : 1000 * lead.laid().areaMm2();
    }
}
