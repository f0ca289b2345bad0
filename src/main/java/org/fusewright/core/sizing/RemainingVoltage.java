package org.fusewright.core.sizing;

import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/**
 * What remains of the battery's voltage with the engine off, while everything of the job runs.
 *
 * @param batteryV between the battery's terminals
 * @param busV at the end of a feed's main lead
 * @param busAtStartV there, at the worst start-up of the job; never above {@code busV}
 */
public record RemainingVoltage(double batteryV, double busV, double busAtStartV) {

    /** In one sentence, in shop language. */
    public Text says() {
        return busAtStartV < busV
                ? Phrase.of(
                        "remaining-voltage.with-start",
                        Amount.volts(batteryV),
                        Amount.volts(busV),
                        Amount.volts(busAtStartV))
                : Phrase.of(
                        "remaining-voltage.running", Amount.volts(batteryV), Amount.volts(busV));
    }
}
