package org.fusewright.core.sizing;

import org.fusewright.core.sizing.FeedPlan.Limb;

import java.util.ArrayList;
import java.util.List;

/**
 * The way up to where leads start.
 *
 * @param limb from the battery on, without the terminal that the lead itself brings
 * @param endsInCavity whether the lead starts in a cavity, else at a splice
 * @param passed leads behind the same device that a short further on runs through as well
 */
record Upstream(Limb limb, boolean endsInCavity, List<Passed> passed) {

    /** A lead with the current that runs through it. */
    record Passed(LaidWire wire, double currentA) {}

    Upstream {
        passed = List.copyOf(passed);
    }

    static Upstream atCavity(Limb limb) {
        return new Upstream(limb, true, List.of());
    }

    static Upstream atSplice(Limb limb) {
        return new Upstream(limb, false, List.of());
    }

    Upstream plusPassed(LaidWire wire, double currentA) {
        List<Passed> more = new ArrayList<>(passed);
        more.add(new Passed(wire, currentA));
        return new Upstream(limb, endsInCavity, more);
    }

    Upstream to(Limb further, boolean cavity) {
        return new Upstream(further, cavity, passed);
    }
}
