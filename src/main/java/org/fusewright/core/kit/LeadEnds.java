package org.fusewright.core.kit;

import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadEnd;
import org.fusewright.core.sizing.LeadEnd.InCavity;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

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
        return circuits.stream()
                .map(sized -> new KitCircuit(sized, named(sized.id(), sized.leads())))
                .toList();
    }

    List<KitFeed> feeds(List<SizedFeed> feeds) {
        return feeds.stream()
                .map(sized -> new KitFeed(sized, named(sized.id(), sized.leads())))
                .toList();
    }

    /** All leads of a kit: the feeds' first, then the circuits', each in the job's order. */
    static List<KitLead> listAll(List<KitCircuit> circuits, List<KitFeed> feeds) {
        return Stream.concat(
                        feeds.stream().flatMap(feed -> feed.leads().stream()),
                        circuits.stream().flatMap(circuit -> circuit.leads().stream()))
                .toList();
    }

    private List<KitLead> named(String owner, List<Lead> leads) {
        return leads.stream()
                .map(lead -> new KitLead(lead, owner, name(lead.from()), name(lead.to())))
                .toList();
    }

    private String name(LeadEnd end) {
        return switch (end) {
            case InCavity cavity ->
                    cavityIds.getOrDefault(
                            cavity, cavity.circuit() + " " + cavity.role().code() + " (no block)");
            case LeadEnd.AtSplice splice -> splice.splice();
            case LeadEnd.At at -> at.place();
        };
    }
}
