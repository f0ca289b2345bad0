package org.fusewright.core.catalog;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A sealed-block relay on two neighbouring positions; terminals by DIN 72552.
 *
 * @param coilV nominal coil voltage
 * @param coilOhm coil resistance at 20 C
 * @param pullInV highest voltage at which it surely operates, coil at 20 C
 * @param dropOutV lowest voltage at which it surely has let go
 * @param contactA make contact's rating with a resistive load
 * @param suppression what limits the coil's voltage peak: "resistor", "diode" or "none"
 */
public record Relay(
        Item item,
        double coilV,
        double coilOhm,
        double pullInV,
        double dropOutV,
        double contactA,
        double contactMilliohm,
        double heightMm,
        String suppression,
        Pinout pinout)
        implements Part {

    /**
     * Which terminal lies in which cavity: first and second position, feed side (a) and load side
     * (b). Each of 30, 85, 86 and 87 once.
     */
    public record Pinout(String firstA, String firstB, String secondA, String secondB) {

        public Pinout {
            if (!Set.of("30", "85", "86", "87")
                    .equals(
                            Stream.of(firstA, firstB, secondA, secondB)
                                    .collect(Collectors.toSet()))) {
                throw Require.refused("refused.relay-terminals");
            }
        }
    }

    public Relay {
        Require.positive("coilV", coilV);
        Require.positive("coilOhm", coilOhm);
        Require.positive("pullInV", pullInV);
        Require.positive("dropOutV", dropOutV);
        Require.positive("contactA", contactA);
        Require.notNegative("contactMilliohm", contactMilliohm);
        Require.positive("heightMm", heightMm);
        if (dropOutV >= pullInV) {
            throw Require.refused("refused.drop-out");
        }
    }
}
