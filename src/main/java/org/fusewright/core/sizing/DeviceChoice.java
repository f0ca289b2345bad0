package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Job;

import java.util.ArrayList;
import java.util.List;

/**
 * The device of a circuit: the smallest rating of the first preferred kind that
 *
 * <ul>
 *   <li>carries its loads with at most 80 % of its rating (75 to 80 % is usual; from memory), or
 *       100 % when all of them are momentary, re-rated for the temperature in the block,
 *   <li>may be used at the charging voltage,
 *   <li>holds through the start of all its loads at its earliest opening, and
 *   <li>breaks the prospective short-circuit current (ISO 8820-3: 1,000 A for blade fuses).
 * </ul>
 *
 * When a kind has none, the next kind is asked. When no kind has one, the last limits are given up
 * first, so that there is always a device and the checks name what it does not meet.
 */
final class DeviceChoice {

    /** Share of its rating that a device carries for long; from memory. */
    static final double CONTINUOUS_SHARE = 0.8;

    /** What a device is asked for, in the order in which limits are kept. */
    enum Limit {
        LOAD,
        VOLTAGE,
        START,
        SHORT
    }

    /** The device, and what decided. */
    record Choice(Device device, List<String> why) {}

    /**
     * What hangs on one device.
     *
     * @param carriedA running current of all its loads
     * @param momentary none of them runs for over two minutes
     * @param fixed the job fixes the rating
     */
    record Demand(
            List<Device> candidates,
            double carriedA,
            boolean momentary,
            StartUp startUp,
            boolean fixed) {

        double share() {
            return momentary ? 1 : CONTINUOUS_SHARE;
        }
    }

    private static final Limit[] LIMITS = Limit.values();

    private final Demand demand;
    private final Job job;
    private final double prospectiveA;

    private DeviceChoice(Demand demand, Job job, double prospectiveA) {
        this.demand = demand;
        this.job = job;
        this.prospectiveA = prospectiveA;
    }

    static Choice choose(Demand demand, Job job, double prospectiveA) {
        return new DeviceChoice(demand, job, prospectiveA).choose();
    }

    private Choice choose() {
        for (int kept = LIMITS.length; kept > 0; kept--) {
            for (int i = 0; i < demand.candidates().size(); i++) {
                Device device = demand.candidates().get(i);
                if (firstMissed(device, kept) == kept) {
                    return new Choice(device, why(i, kept));
                }
            }
        }
        Device largest = demand.candidates().getFirst();
        for (Device device : demand.candidates()) {
            if (device.ratingA() > largest.ratingA()) {
                largest = device;
            }
        }
        return new Choice(
                largest,
                List.of(
                        named(largest)
                                + (demand.fixed()
                                        ? ": the job fixes the rating, although it does not carry "
                                        : " stands in: no stocked device carries ")
                                + Say.amps(demand.carriedA())
                                + "."));
    }

    /** The number of the first limit that a device misses, or {@code kept} when it meets those. */
    private int firstMissed(Device device, int kept) {
        for (int i = 0; i < kept; i++) {
            if (!meets(device, LIMITS[i])) {
                return i;
            }
        }
        return kept;
    }

    private boolean meets(Device device, Limit limit) {
        return switch (limit) {
            case LOAD -> demand.carriedA() <= carries(device);
            case VOLTAGE -> device.maxVoltageV() >= job.supply().chargingV();
            case START ->
                    demand.startUp()
                            .isHeldBy(
                                    TimeCurrentBand.of(device, job.surroundings().blockAmbient()));
            case SHORT -> device.interruptingA() >= prospectiveA;
        };
    }

    private double carries(Device device) {
        return demand.share()
                * device.ratingA()
                * device.rerating().factorAt(job.surroundings().blockAmbient());
    }

    private List<String> why(int chosenIndex, int kept) {
        Device chosen = demand.candidates().get(chosenIndex);
        List<String> why = new ArrayList<>();
        DeviceKind told = chosen.kind();
        for (int i = chosenIndex - 1; i >= 0; i--) {
            Device passed = demand.candidates().get(i);
            if (passed.kind() != told) {
                told = passed.kind();
                why.addFirst("No " + told.code() + ": " + missed(passed, kept) + ".");
            }
        }
        why.add(decided(chosenIndex, chosen, kept));
        if (kept < LIMITS.length) {
            why.add("No stocked device meets every limit: " + missed(chosen, LIMITS.length) + ".");
        }
        return why;
    }

    private String decided(int chosenIndex, Device chosen, int kept) {
        if (demand.fixed()) {
            return named(chosen) + ": the job fixes the rating.";
        }
        Device smaller = chosenIndex == 0 ? chosen : demand.candidates().get(chosenIndex - 1);
        if (chosenIndex == 0 || smaller.kind() != chosen.kind()) {
            return named(chosen)
                    + ": the smallest in stock, it carries "
                    + Say.amps(carries(chosen))
                    + " for the "
                    + Say.amps(demand.carriedA())
                    + " asked.";
        }
        return named(chosen) + ": the next smaller does not do, " + missed(smaller, kept) + ".";
    }

    private String missed(Device device, int kept) {
        int missed = firstMissed(device, kept);
        if (missed == kept) {
            return named(device) + " meets every limit";
        }
        return switch (LIMITS[missed]) {
            case LOAD ->
                    named(device)
                            + " carries "
                            + Say.amps(carries(device))
                            + " in the block, not "
                            + Say.amps(demand.carriedA());
            case VOLTAGE ->
                    named(device) + " is made for " + Say.volts(device.maxVoltageV()) + " at most";
            case START ->
                    named(device)
                            + " may open at the start current of "
                            + Say.amps(demand.startUp().peakA());
            case SHORT ->
                    named(device)
                            + " breaks "
                            + Say.amps(device.interruptingA())
                            + ", a short may draw "
                            + Say.amps(prospectiveA);
        };
    }

    private static String named(Device device) {
        return device.kind().code() + " " + Say.rating(device.ratingA());
    }
}
