package org.fusewright.core.job;

import java.util.Optional;

/**
 * What a load is, and with it how its current follows the voltage: I = I0 (V/V0)^n.
 *
 * <p>Exponents are those of the physics of each kind (a resistor n = 1, constant power n = -1);
 * 0.55 for tungsten filaments is common practice, no published source. Start-up multiples lie
 * inside the ranges of relay application tables (lamp 10 to 15, motor 5 to 10, solenoid 10 to 20,
 * capacitive 20 to 40 times). A start is reckoned as its multiple held for a duration; the
 * durations are from memory and lie at the low end of what is told, since the real surge decays: a
 * motor's that dies away with a time constant of 0.2 s has the energy of its peak held for 0.1 s.
 */
public enum LoadKind {
    RESISTIVE("resistive", 1, 1, 0),
    FILAMENT_LAMP("filament-lamp", 0.55, 12, 20),
    LED("led", -1, 20, 1),
    ELECTRONIC("electronic", -1, 20, 3),
    MOTOR("motor", 0, 6, 100),
    PUMP("pump", 0, 5, 100),
    COIL("coil", 1, 10, 70),
    SOCKET("socket", 0, 1, 0);

    private final String code;
    private final double exponent;
    private final Inrush inrush;

    LoadKind(String code, double exponent, double inrushMultiple, double inrushMs) {
        this.code = code;
        this.exponent = exponent;
        this.inrush = new Inrush(inrushMultiple, inrushMs);
    }

    public String code() {
        return code;
    }

    /** The exponent n in I = I0 (V/V0)^n. */
    public double exponent() {
        return exponent;
    }

    /** Start-up current when the job gives none. */
    public Inrush usualInrush() {
        return inrush;
    }

    public boolean isLamp() {
        return this == FILAMENT_LAMP || this == LED;
    }

    /** Whether it sets something in motion that may catch a hand. */
    public boolean moves() {
        return this == MOTOR || this == PUMP;
    }

    public static Optional<LoadKind> parse(String code) {
        for (LoadKind kind : values()) {
            if (kind.code.equals(code)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
