package org.fusewright.core.count;

import org.fusewright.core.kit.Kit;

/**
 * The design that a bag is made to.
 *
 * @param revision of the kept job; {@link #NOT_KEPT} for a job that is not kept
 * @param fingerprint of the kit
 * @param supplyV highest voltage of the supply: what devices must interrupt at
 */
public record BagDesign(
        String reference,
        String title,
        String customer,
        int revision,
        String fingerprint,
        String catalogVersion,
        double supplyV) {

    /** The revision of a job that is not kept. */
    public static final int NOT_KEPT = 0;

    public static BagDesign of(Kit kit, int revision) {
        return new BagDesign(
                kit.job().reference(),
                kit.job().title(),
                kit.job().customer(),
                revision,
                kit.fingerprint(),
                kit.catalogVersion(),
                Math.max(kit.job().supply().chargingV(), kit.job().supply().nominalV()));
    }
}
