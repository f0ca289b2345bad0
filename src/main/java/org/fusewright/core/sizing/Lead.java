package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Millimetres;

/**
 * One piece of wire.
 *
 * @param id the circuit's or feed's id, a slash and what it is: "pump/out"
 * @param routeM length of the way that it takes
 * @param cut what to cut: route and slack, an allowance for each end, rounded up to the step
 * @param currentA running current
 * @param dropV voltage drop along it at that current and its conductor's temperature
 */
public record Lead(
        String id,
        LeadRole role,
        Wire wire,
        double routeM,
        Millimetres cut,
        double currentA,
        double dropV,
        LeadEnd from,
        LeadEnd to) {}
