package org.fusewright.core.sizing;

/** Where a lead ends. */
public sealed interface LeadEnd {

    /** In the cavity of a circuit's device or relay; which cavity, the fitting decides. */
    record InCavity(String circuit, CavityRole role) implements LeadEnd {}

    /** At a splice, by its id. */
    record AtSplice(String splice) implements LeadEnd {}

    /** Anywhere else, in words: "battery", "load Pump", "ground", "controller". */
    record At(String place) implements LeadEnd {}
}
