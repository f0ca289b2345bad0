package org.fusewright.papers;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.words.Wording;

/** Devices and relays in words. */
final class Devices {

    private final Wording wording;
    private final Figures figures;

    Devices(Sheet sheet) {
        wording = sheet.wording();
        figures = sheet.figures();
    }

    String rating(Part part) {
        return switch (part) {
            case Device device -> figures.amperes(device.ratingA());
            case Relay relay -> figures.amperes(relay.contactA());
            default -> "";
        };
    }

    /** The rating with the word for the body colour, where it has one. */
    String ratingAndColour(Part part) {
        String colour = colour(part);
        return colour.isEmpty() ? rating(part) : rating(part) + ", " + colour;
    }

    /** The word for the body colour of a device; empty where it has none. */
    String colour(Part part) {
        return part instanceof Device device ? Colours.ofBody(device.colour(), wording) : "";
    }

    String kind(Part part) {
        return switch (part) {
            case Device device -> wording.say("drawing.kind." + device.kind().code());
            case Relay relay -> relay(relay);
            default -> "";
        };
    }

    private String relay(Relay relay) {
        return wording.say("print.device.relay", figures.of(relay.coilV()));
    }
}
