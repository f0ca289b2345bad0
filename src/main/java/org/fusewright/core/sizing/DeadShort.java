package org.fusewright.core.sizing;

import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A dead short behind a device, as a jumper wire would make it, worked out on paper: what it draws,
 * how long the device takes at the latest, and how hot the weakest lead gets by then.
 *
 * <p>Method of {@link ShortCircuitWithstand} (IEC 60364-4-43, end temperature by IEC 60949): no
 * heat leaves the lead, which is taken to carry the whole current wherever the short lies. It holds
 * for 5 s; where the device takes longer or need not open at all, energy and temperature are those
 * after 5 s, and {@link #isBeyondMethod()} says so.
 *
 * @param prospectiveA what the short draws
 * @param clearsS latest opening of the device; empty when it need not open at this current
 * @param letThroughA2s I2t until then, counted for 5 s at most
 * @param survivesA2s k2 S2 of the weakest lead; 0 when it has no room to heat up
 * @param endC end temperature of that lead's conductor; 1,083 C, where copper melts, at most
 * @param lead id of the lead that survives least, of two alike the first
 */
public record DeadShort(
        Place place,
        double prospectiveA,
        OptionalDouble clearsS,
        double letThroughA2s,
        double survivesA2s,
        double endC,
        String lead) {

    /** Where the short is. */
    public enum Place {
        /** Right behind the device: the highest current that it must break. */
        AT_DEVICE("at-device"),
        /** At the far end of the longest branch: the lowest current that it must open at. */
        FAR_END("far-end");

        private final String code;

        Place(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    public DeadShort {
        requireFinite("prospectiveA", prospectiveA);
        requireFinite("clearsS", clearsS.orElse(0));
        requireFinite("letThroughA2s", letThroughA2s);
        requireFinite("survivesA2s", survivesA2s);
        requireFinite("endC", endC);
    }

    private static void requireFinite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite: " + value);
        }
    }

    /**
     * The short at the device, then the one at the far end.
     *
     * @param leads all behind the device; one at least
     */
    static List<DeadShort> list(
            List<ProtectedLead> leads, TimeCurrentBand band, ShortCircuitWithstand.Span span) {
        ProtectedLead weakest = leads.getFirst();
        double survivesA2s = survivesA2s(weakest);
        for (ProtectedLead lead : leads) {
            double leadSurvivesA2s = survivesA2s(lead);
            if (leadSurvivesA2s < survivesA2s) {
                weakest = lead;
                survivesA2s = leadSurvivesA2s;
            }
        }
        return List.of(
                of(Place.AT_DEVICE, span.highestA(), band, weakest, survivesA2s),
                of(Place.FAR_END, span.lowestA(), band, weakest, survivesA2s));
    }

    private static double survivesA2s(ProtectedLead lead) {
        return ShortCircuitWithstand.survivesA2s(lead.laid(), lead.currentA());
    }

    private static DeadShort of(
            Place place,
            double prospectiveA,
            TimeCurrentBand band,
            ProtectedLead weakest,
            double survivesA2s) {
        double latestS = band.latestS(prospectiveA);
        double countedS = Math.min(latestS, ShortCircuitWithstand.LONGEST_S);
        double letThroughA2s = prospectiveA * prospectiveA * countedS;
        return new DeadShort(
                place,
                prospectiveA,
                Double.isInfinite(latestS) ? OptionalDouble.empty() : OptionalDouble.of(latestS),
                letThroughA2s,
                survivesA2s,
                ShortCircuitWithstand.endC(weakest.laid(), weakest.currentA(), letThroughA2s),
                weakest.id());
    }

    /** Whether the weakest lead's insulation survives the energy that is counted. */
    public boolean isSurvived() {
        return letThroughA2s <= survivesA2s;
    }

    /** Whether the device takes longer than the 5 s that the method covers, or for ever. */
    public boolean isBeyondMethod() {
        return clearsS.isEmpty() || clearsS.getAsDouble() > ShortCircuitWithstand.LONGEST_S;
    }

    /** The whole of it in one sentence. */
    public Text says() {
        Amount drawsA = Amount.amps(prospectiveA);
        Amount reachesC = Amount.celsius(endC);
        if (clearsS.isEmpty()) {
            return Phrase.of("dead-short.never." + place.code, drawsA, lead, reachesC);
        }
        return Phrase.of(
                (isBeyondMethod() ? "dead-short.late." : "dead-short.cleared.") + place.code,
                drawsA,
                lead,
                reachesC,
                Amount.seconds(clearsS.getAsDouble()));
    }
}
