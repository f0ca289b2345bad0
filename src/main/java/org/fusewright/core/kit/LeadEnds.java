package org.fusewright.core.kit;

import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadEnd;
import org.fusewright.core.sizing.LeadEnd.InCavity;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Names both ends of each lead as the drawing does, now that the cavities are known. */
final class LeadEnds {

    private final Map<InCavity, String> cavityIds = new HashMap<>();

    private LeadEnds(List<KitBlock> blocks) {
        for (KitBlock block : blocks) {
            for (Cavity cavity : block.cavities()) {
                cavity.occupant()
                        .ifPresent(
                                occupant ->
                                        cavityIds.put(
                                                new InCavity(occupant.circuit(), occupant.role()),
                                                cavity.id()));
            }
        }
    }

    static LeadEnds of(List<KitBlock> blocks) {
        return new LeadEnds(blocks);
    }

    List<KitCircuit> circuits(List<SizedCircuit> circuits) {
        List<KitCircuit> named = new ArrayList<>(circuits.size());
        for (SizedCircuit sized : circuits) {
            named.add(new KitCircuit(sized, named(sized.id(), sized.leads())));
        }
        return named;
    }

    List<KitFeed> feeds(List<SizedFeed> feeds) {
        List<KitFeed> named = new ArrayList<>(feeds.size());
        for (SizedFeed sized : feeds) {
            named.add(new KitFeed(sized, named(sized.id(), sized.leads())));
        }
        return named;
    }

    /** All leads of a kit: the feeds' first, then the circuits', each in the job's order. */
    static List<KitLead> listAll(List<KitCircuit> circuits, List<KitFeed> feeds) {
        List<KitLead> leads = new ArrayList<>();
        feeds.forEach(feed -> leads.addAll(feed.leads()));
        circuits.forEach(circuit -> leads.addAll(circuit.leads()));
        return leads;
    }

    private List<KitLead> named(String owner, List<Lead> leads) {
        List<KitLead> named = new ArrayList<>(leads.size());
        for (Lead lead : leads) {
            named.add(new KitLead(lead, owner, name(lead.from()), name(lead.to())));
        }
        return named;
    }

    private String name(LeadEnd end) {
        return switch (end) {
            case InCavity cavity -> {
                String id = cavityIds.get(cavity);
                yield id != null
                        ? id
                        : cavity.circuit() + " " + cavity.role().code() + " (no block)";
            }
            case LeadEnd.AtSplice splice -> splice.splice();
            case LeadEnd.At at -> at.place();
        };
    }
}
