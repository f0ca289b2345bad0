package org.fusewright.papers;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.words.Wording;

import java.util.Locale;

/** Colours of wires and devices in words. */
final class Colours {

    private Colours() {}

    /** Size, letters and word of a wire: "1.0 mm² RDBK red/black". */
    static String sizeAndColour(Wire wire, Sheet sheet) {
        return sheet.figures().size(wire.size())
                + " "
                + wire.colour()
                + " "
                + ofWire(wire.colour(), sheet.wording());
    }

    /** "violet", or "red/black" for red with a black stripe. */
    static String ofWire(WireColour colour, Wording wording) {
        String base = wording.say("colour." + colour.base().code().toLowerCase(Locale.ROOT));
        return colour.stripe().map(stripe -> base + "/" + ofWire(stripe, wording)).orElse(base);
    }

    /**
     * The body colour of a device by its word in ISO 8820-3; another word of a catalog as it is.
     */
    static String ofBody(String word, Wording wording) {
        return switch (word) {
            case "tan" -> wording.say("print.colour.tan");
            case "clear" -> wording.say("print.colour.clear");
            default -> WireColour.findByWord(word).map(one -> ofWire(one, wording)).orElse(word);
        };
    }
}
