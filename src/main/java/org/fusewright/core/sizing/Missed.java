package org.fusewright.core.sizing;

import org.fusewright.core.check.CheckCode;

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
    String says() {
        String size = wire.wire().size().toString();
        return switch (reason) {
            case FITS_NO_TERMINAL -> size + " fits no stocked terminal and seal";
            case TERMINAL_TOO_WEAK -> "a terminal on " + size + " carries " + Say.amps(figure);
            case NOT_PROTECTED -> size + " carries " + Say.amps(figure) + " here";
            case TOO_HOT_BEFORE_OPENING ->
                    size + " may reach " + Math.round(figure) + " C before the device opens";
            case BURNS_IN_A_SHORT ->
                    size + " does not survive a dead short until the device clears";
            case SHORT_NOT_CLEARED ->
                    "a short at the far end of " + size + " draws only " + Say.amps(figure);
            case DROPS_TOO_MUCH -> size + " would lose " + Say.percent(figure);
            case NO_SPLICE -> "no stocked splice joins " + size + " to its branches";
        };
    }
}
