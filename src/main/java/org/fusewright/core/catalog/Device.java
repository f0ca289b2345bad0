package org.fusewright.core.catalog;

import java.util.Map;
import java.util.Optional;

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

    /** Body colours of mini and medium blade fuses by rating (ISO 8820-3). */
    private static final Map<Double, String> RATING_COLOURS =
            Map.ofEntries(
                    Map.entry(1.0, "black"),
                    Map.entry(2.0, "grey"),
                    Map.entry(3.0, "violet"),
                    Map.entry(4.0, "pink"),
                    Map.entry(5.0, "tan"),
                    Map.entry(7.5, "brown"),
                    Map.entry(10.0, "red"),
                    Map.entry(15.0, "blue"),
                    Map.entry(20.0, "yellow"),
                    Map.entry(25.0, "white"),
                    Map.entry(30.0, "green"),
                    Map.entry(40.0, "orange"));

    public Device {
        Require.positive("ratingA", ratingA);
        Require.positive("maxVoltageV", maxVoltageV);
        Require.positive("interruptingA", interruptingA);
        Require.positive("heightMm", heightMm);
        Require.notNegative("milliohm", milliohm);
    }

    /**
     * The colour that stands for the rating of a mini or medium blade, which breakers on that
     * footprint are told by too; empty for a rating without one and for other footprints.
     */
    public Optional<String> ratingColour() {
        return form == BladeForm.HIGH_CURRENT
                ? Optional.empty()
                : Optional.ofNullable(RATING_COLOURS.get(ratingA));
    }
}
