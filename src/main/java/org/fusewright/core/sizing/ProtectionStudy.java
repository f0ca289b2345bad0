package org.fusewright.core.sizing;

import org.fusewright.core.job.Job;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.TimeCurrentChart.Demand;
import org.fusewright.core.sizing.TimeCurrentChart.Endurance;
import org.fusewright.core.sizing.TimeCurrentChart.Guard;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * What is known of one device and of all that hangs on it, its own circuit and those that borrow
 * it. Nothing is computed before somebody asks.
 */
public final class ProtectionStudy {

    private final Job job;
    private final List<CircuitPlan> plans;
    private final TimeCurrentBand band;
    private final FeedPlan feed;

    /**
     * @param plans of the circuit that owns the device, and then of those that borrow it
     * @param band of the device in the job's block
     * @param feed that it hangs on
     */
    ProtectionStudy(Job job, List<CircuitPlan> plans, TimeCurrentBand band, FeedPlan feed) {
        this.job = job;
        this.plans = plans;
        this.band = band;
        this.feed = feed;
    }

    /** How the figures along the way of its current came about. */
    public WayFormulas formulas() {
        return new WayFormulas(job, plans, feed);
    }

    /** Drawn anew with each call. */
    public TimeCurrentChart chart() {
        CircuitPlan owner = plans.getFirst();
        ShortCircuitWithstand.Span shorts =
                new ShortCircuitWithstand.Span(lowestA(), owner.highestA());
        return TimeCurrentChart.of(
                new Guard(owner.device(), job.surroundings().blockAmbient()),
                new Demand(startUp(), owner.carriedA()),
                endurance(weakest(shorts.highestA())),
                shorts);
    }

    /** A dead short right behind the device, then one at the far end of the longest branch. */
    public List<DeadShort> deadShorts() {
        return DeadShort.list(
                leads(),
                band,
                new ShortCircuitWithstand.Span(lowestA(), plans.getFirst().highestA()));
    }

    private List<ProtectedLead> leads() {
        List<ProtectedLead> leads = new ArrayList<>();
        for (CircuitPlan plan : plans) {
            leads.addAll(ProtectedLead.listBehindDevice(plan.leads()));
        }
        return leads;
    }

    private double lowestA() {
        double farthestOhm = 0;
        for (CircuitPlan plan : plans) {
            farthestOhm = Math.max(farthestOhm, plan.farOhm());
        }
        return FaultCurrent.lowestA(job.supply(), new Ohms(farthestOhm));
    }

    private StartUp startUp() {
        List<SingleLoad> loads = new ArrayList<>();
        for (CircuitPlan plan : plans) {
            loads.addAll(plan.demand().loads());
        }
        return StartUp.of(loads);
    }

    /** The lead that reaches its limit first in a short at the device. */
    private ProtectedLead weakest(double shortA) {
        List<ProtectedLead> leads = leads();
        ProtectedLead weakest = leads.getFirst();
        double leastS = secondsTo(weakest).applyAsDouble(shortA);
        for (ProtectedLead lead : leads) {
            double seconds = secondsTo(lead).applyAsDouble(shortA);
            if (seconds < leastS) {
                leastS = seconds;
                weakest = lead;
            }
        }
        return weakest;
    }

    private static Endurance endurance(ProtectedLead lead) {
        return new Endurance(
                lead.named(),
                OverloadProtection.shortTermC(lead.laid()),
                ShortCircuitWithstand.survivesC(lead.laid()),
                secondsTo(lead));
    }

    /**
     * How long a lead bears a current that comes on top of its running current: up to 5 s what its
     * insulation survives once, by the law of {@link ShortCircuitWithstand}; for longer until its
     * short-term temperature, as {@link OverloadProtection} asks.
     */
    private static DoubleUnaryOperator secondsTo(ProtectedLead lead) {
        WireHeat heat = lead.laid().heat();
        double startC = heat.steadyC(lead.currentA());
        double survivesA2s = ShortCircuitWithstand.survivesA2s(lead.laid(), lead.currentA());
        double shortTermC = OverloadProtection.shortTermC(lead.laid());
        return currentA -> {
            double onceS = survivesA2s / (currentA * currentA);
            return onceS <= ShortCircuitWithstand.LONGEST_S
                    ? onceS
                    : Math.max(
                            ShortCircuitWithstand.LONGEST_S,
                            heat.secondsTo(currentA, startC, shortTermC));
        };
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ProtectionStudy study
                && job.equals(study.job)
                && plans.equals(study.plans);
    }

    @Override
    public int hashCode() {
        return plans.hashCode();
    }
}
