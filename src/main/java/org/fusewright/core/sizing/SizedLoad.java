package org.fusewright.core.sizing;

/** A load's running current and the voltage it loses, out and back, contacts included. */
public record SizedLoad(String title, double runningA, double dropV, double dropPercent) {}
