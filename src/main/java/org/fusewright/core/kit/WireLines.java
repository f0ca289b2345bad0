package org.fusewright.core.kit;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Millimetres;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The leads sorted by the wire they are cut from; each lead stands in exactly one line. */
final class WireLines {

    private static final Comparator<WireLine> BY_FAMILY_SIZE_COLOUR =
            Comparator.comparing((WireLine line) -> line.wire().family())
                    .thenComparing(line -> line.wire().size())
                    .thenComparing(line -> line.wire().colour())
                    .thenComparing(line -> line.wire().number());

    private WireLines() {}

    static List<WireLine> of(List<KitLead> leads) {
        Map<PartNumber, List<KitLead>> byWire = new LinkedHashMap<>();
        for (KitLead lead : leads) {
            byWire.computeIfAbsent(lead.lead().wire().number(), number -> new ArrayList<>())
                    .add(lead);
        }
        List<WireLine> lines = new ArrayList<>(byWire.size());
        byWire.values().forEach(ofWire -> lines.add(line(ofWire)));
        lines.sort(BY_FAMILY_SIZE_COLOUR);
        return lines;
    }

    private static WireLine line(List<KitLead> leads) {
        Wire wire = leads.getFirst().lead().wire();
        Millimetres total = new Millimetres(0);
        for (KitLead lead : leads) {
            total = total.plus(lead.lead().cut());
        }
        return new WireLine(wire, leads, total);
    }
}
