package org.fusewright.core.catalog;

/**
 * A protective device: blade fuse, manual-reset breaker or auto-reset breaker.
 *
 * @param maxVoltageV highest system voltage that it may interrupt at
 * @param interruptingA highest prospective current that it breaks safely
 * @param heightMm how far it stands above the block; the cap must clear it
 * @param milliohm its resistance at rated current
 * @param colour body colour in words (ISO 8820-3 for fuses); empty when it has no coded colour
 */
public record Device(
        Item item,
        DeviceKind kind,
        BladeForm form,
        double ratingA,
        double maxVoltageV,
        double interruptingA,
        double heightMm,
        double milliohm,
        String colour,
        TimeCurrent gates,
        Rerating rerating)
        implements Part {

    public Device {
        Require.positive("ratingA", ratingA);
        Require.positive("maxVoltageV", maxVoltageV);
        Require.positive("interruptingA", interruptingA);
        Require.positive("heightMm", heightMm);
        Require.notNegative("milliohm", milliohm);
    }
}
