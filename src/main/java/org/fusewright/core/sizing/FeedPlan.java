package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.words.Text;

import java.util.List;

/**
 * A feed with its parts chosen.
 *
 * @param wire of its source and main lead, and of links between its splices
 * @param limb from the source to the far end of the main lead
 * @param highestA prospective short-circuit current at the main device
 */
record FeedPlan(
        FeedDemand demand,
        Device main,
        Holder holder,
        LaidWire wire,
        Limb limb,
        double highestA,
        List<Outlet> outlets,
        List<LaidLead> leads,
        List<SizedSplice> splices,
        boolean splicesFit,
        List<Text> why) {

    /**
     * A way from the source to some point.
     *
     * @param dropV voltage lost on it while everything runs
     * @param leastOhm its resistance cold and without devices, battery included
     * @param mostOhm its resistance warm and with everything, battery included
     */
    record Limb(double dropV, double leastOhm, double mostOhm) {

        Limb plusLead(LaidWire laid, double routeM, double currentA) {
            double warmOhm = laid.warmOhm(routeM, currentA);
            return new Limb(
                    dropV + warmOhm * currentA, leastOhm + laid.coldOhm(routeM), mostOhm + warmOhm);
        }

        /** A contact, which counts in full in either case. */
        Limb plusContact(double ohm, double currentA) {
            return new Limb(dropV + ohm * currentA, leastOhm + ohm, mostOhm + ohm);
        }

        /** A device, which a short may find closed and cold: not in the least resistance. */
        Limb plusDevice(double ohm, double currentA) {
            return new Limb(dropV + ohm * currentA, leastOhm, mostOhm + ohm);
        }
    }

    /**
     * Where a service gets its current from.
     *
     * @param wire of the lead that ends in the service's cavity
     * @param from where that lead starts
     * @param routeM of that lead
     * @param limb to the cavity for a device, to the start of the trigger lead for a relay
     */
    record Outlet(
            FeedDemand.Service service, LaidWire wire, LeadEnd from, double routeM, Limb limb) {}

    FeedPlan {
        outlets = List.copyOf(outlets);
        leads = List.copyOf(leads);
        splices = List.copyOf(splices);
        why = List.copyOf(why);
    }
}
