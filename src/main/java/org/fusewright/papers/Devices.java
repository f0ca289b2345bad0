package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;

/** Devices and relays in words. */
final class Devices {

    private Devices() {}

    static String rating(Part part) {
        return switch (part) {
            case Device device -> Figures.amperes(device.ratingA());
            case Relay relay -> Figures.amperes(relay.contactA());
            default -> "";
        };
    }

    /** The rating with the word for the body colour, where it has one. */
    static String ratingAndColour(Part part) {
        return part instanceof Device device && !device.colour().isEmpty()
                ? rating(part) + ", " + device.colour()
                : rating(part);
    }

    static String kind(Part part) {
        return switch (part) {
            case Device device -> device.kind().code();
            case Relay relay -> "relay, " + Figures.of(relay.coilV()) + " V coil";
            default -> "";
        };
    }
}
