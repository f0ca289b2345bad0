package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
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

    /** What a main device misses, in words that start with its rating and have no stop. */
    Optional<Text> findMissed(Device main) {
        return Optional.ofNullable(firstMissed(main)).map(missed -> says(main, missed));
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

    private Text says(Device main, Limit missed) {
        Amount named = Amount.rating(main.ratingA());
        return switch (missed) {
            case LOAD ->
                    Phrase.of(
                            "main-misses.load",
                            named,
                            Amount.amps(carriesA(main)),
                            Amount.amps(demand.runningA()));
            case SIZE ->
                    Phrase.of("main-misses.size", named, Amount.rating(demand.largestBranchA()));
            case VOLTAGE ->
                    Phrase.of("main-misses.voltage", named, Amount.volts(main.maxVoltageV()));
            case START ->
                    Phrase.of("main-misses.start", named, Amount.amps(demand.startUp().peakA()));
        };
    }
}
