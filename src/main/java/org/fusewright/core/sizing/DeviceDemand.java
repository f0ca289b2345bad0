package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;

import java.util.List;

/**
 * What hangs on one device.
 *
 * @param candidates by kind in the order of preference, each by rising rating
 * @param carriedA running current of all its loads
 * @param momentary none of them runs for over two minutes
 * @param fixed the job fixes the rating
 */
record DeviceDemand(
        List<Device> candidates,
        double carriedA,
        boolean momentary,
        StartUp startUp,
        boolean fixed) {

    /** The share of its rating that a device may carry here. */
    double share() {
        return momentary ? 1 : DeviceLimits.CONTINUOUS_SHARE;
    }
}
