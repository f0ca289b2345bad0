package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.jspecify.annotations.Nullable;

import java.util.Optional;

/** What a feed's main device must meet by itself, whatever its wire is. */
final class MainLimits {

    private enum Limit {
        LOAD,
        SIZE,
        VOLTAGE,
        START
    }

    private static final Limit[] LIMITS = Limit.values();

    private final Loom loom;
    private final FeedDemand demand;

    MainLimits(Loom loom, FeedDemand demand) {
        this.loom = loom;
        this.demand = demand;
    }

    boolean areMetBy(Device main) {
        return firstMissed(main) == null;
    }

    /** What a main device misses, in words that start with its rating. */
    Optional<String> findMissed(Device main) {
        @Nullable Limit missed = firstMissed(main);
        return missed == null
                ? Optional.empty()
                : Optional.of(Say.rating(main.ratingA()) + says(main, missed));
    }

    private @Nullable Limit firstMissed(Device main) {
        for (Limit limit : LIMITS) {
            if (!meets(main, limit)) {
                return limit;
            }
        }
        return null;
    }

    private boolean meets(Device main, Limit limit) {
        return switch (limit) {
            case LOAD -> demand.runningA() <= carriesA(main);
            case SIZE -> main.ratingA() > demand.largestBranchA();
            case VOLTAGE -> main.maxVoltageV() >= loom.job().supply().chargingV();
            case START -> demand.startUp().isHeldBy(loom.bandOfMain(main));
        };
    }

    private double carriesA(Device main) {
        return DeviceLimits.CONTINUOUS_SHARE * loom.bandOfMain(main).ratedA();
    }

    private String says(Device main, Limit missed) {
        return switch (missed) {
            case LOAD ->
                    " carries " + Say.amps(carriesA(main)) + ", not " + Say.amps(demand.runningA());
            case SIZE ->
                    " is not larger than the " + Say.rating(demand.largestBranchA()) + " behind it";
            case VOLTAGE -> " is made for " + Say.volts(main.maxVoltageV()) + " at most";
            case START -> " may open at the start current of " + Say.amps(demand.startUp().peakA());
        };
    }
}
