package org.fusewright.core.why;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.job.Supply;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.sizing.CurrentFormulas;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadEnd;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/** What the leads of a kit carry: each by what hangs on its end, or goes on from there. */
final class LeadCurrents {

    private final Kit kit;

    LeadCurrents(Kit kit) {
        this.kit = kit;
    }

    Derivation of(KitLead kitLead) {
        Lead lead = kitLead.lead();
        String owner = kitLead.owner();
        return switch (lead.role()) {
            case FEED -> Why.carried(kit, feed(owner));
            case TRIGGER, GROUND -> CurrentFormulas.coil(circuit(owner).resolved(), supply());
            case PIGTAIL ->
                    lead.to() instanceof LeadEnd.InCavity cavity
                            ? CurrentFormulas.carried(Why.behind(kit, circuit(cavity.circuit())))
                            : onward(lead, mostOf(feed(owner).sized()));
            case JUMPER, TRUNK ->
                    lead.to() instanceof LeadEnd.AtSplice
                            ? onward(lead, OptionalDouble.empty())
                            : CurrentFormulas.running(
                                    circuit(owner).resolved().circuit(), supply());
            case BRANCH ->
                    lead.to() instanceof LeadEnd.AtSplice
                            ? onward(lead, OptionalDouble.empty())
                            : ofLoad(owner, lead.to());
            case RETURN ->
                    lead.from() instanceof LeadEnd.AtSplice
                            ? CurrentFormulas.passedOn(
                                    lead,
                                    leads(back -> back.to().equals(lead.from())),
                                    OptionalDouble.empty())
                            : ofLoad(owner, lead.from());
        };
    }

    private Derivation onward(Lead lead, OptionalDouble mostA) {
        return CurrentFormulas.passedOn(lead, leads(next -> next.from().equals(lead.to())), mostA);
    }

    private Derivation ofLoad(String circuit, LeadEnd end) {
        return CurrentFormulas.single(circuit(circuit).resolved().circuit(), end, supply());
    }

    /** A feed whose devices never all draw at once runs less than they add up to. */
    private static OptionalDouble mostOf(SizedFeed feed) {
        return feed.feed().diversity() == 1
                ? OptionalDouble.empty()
                : OptionalDouble.of(feed.runningA());
    }

    private List<Lead> leads(Predicate<Lead> there) {
        return kit.leads().map(KitLead::lead).filter(there).toList();
    }

    private SizedCircuit circuit(String id) {
        return kit.findCircuit(id).orElseThrow().sized();
    }

    private KitFeed feed(String id) {
        return kit.findFeed(id).orElseThrow();
    }

    private Supply supply() {
        return kit.job().supply();
    }
}
