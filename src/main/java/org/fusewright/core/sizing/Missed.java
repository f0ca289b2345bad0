package org.fusewright.core.sizing;

import org.fusewright.core.check.CheckCode;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/**
 * Why a choice of leads will not do.
 *
 * @param wire the one that falls short
 * @param figure what it reaches, in the unit that the reason speaks of
 */
record Missed(Reason reason, LaidWire wire, double figure) {

    /** The check that such a choice would not pass. */
    enum Reason {
        FITS_NO_TERMINAL(CheckCode.TERMINAL_FIT),
        TERMINAL_TOO_WEAK(CheckCode.TERMINAL_CURRENT),
        NOT_PROTECTED(CheckCode.OVERLOAD_PROTECTION),
        TOO_HOT_BEFORE_OPENING(CheckCode.OVERLOAD_PROTECTION),
        BURNS_IN_A_SHORT(CheckCode.SHORT_CIRCUIT_WITHSTAND),
        SHORT_NOT_CLEARED(CheckCode.FAULT_CLEARING),
        DROPS_TOO_MUCH(CheckCode.VOLTAGE_DROP),
        NO_SPLICE(CheckCode.SPLICE_PLACEMENT);

        private final CheckCode code;

        Reason(CheckCode code) {
            this.code = code;
        }

        CheckCode code() {
            return code;
        }
    }

    /** A sentence without its stop. */
    Text says() {
        String size = wire.wire().size().toString();
        return switch (reason) {
            case FITS_NO_TERMINAL -> Phrase.of("leads-miss.terminal", size);
            case TERMINAL_TOO_WEAK ->
                    Phrase.of("leads-miss.terminal-current", size, Amount.amps(figure));
            case NOT_PROTECTED -> Phrase.of("leads-miss.protection", size, Amount.amps(figure));
            case TOO_HOT_BEFORE_OPENING ->
                    Phrase.of("leads-miss.warming", size, Amount.celsius(figure));
            case BURNS_IN_A_SHORT -> Phrase.of("leads-miss.withstand", size);
            case SHORT_NOT_CLEARED -> Phrase.of("leads-miss.clearing", size, Amount.amps(figure));
            case DROPS_TOO_MUCH -> Phrase.of("leads-miss.drop", size, Amount.percent(figure));
            case NO_SPLICE -> Phrase.of("leads-miss.splice", size);
        };
    }
}
