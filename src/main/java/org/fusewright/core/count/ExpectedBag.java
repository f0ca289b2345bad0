package org.fusewright.core.count;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.words.Phrase;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The lines that a bag is counted by: one for each part number of the kit, in the kit's order. */
public final class ExpectedBag {

    /** How the bagged sets of a kit lie in its bag. */
    public enum Sets {
        /** Unopened: a set counts as one piece. */
        CLOSED,
        /** Opened: what they hold is counted. */
        OPENED
    }

    /** What wire is counted in. */
    private enum WireUnit {
        LEADS,
        METRES
    }

    private static final class Tally {
        private final Part part;
        private BigDecimal quantity = BigDecimal.ZERO;
        private final List<String> places = new ArrayList<>();

        private Tally(Part part) {
            this.part = part;
        }
    }

    private final Kit kit;
    private final Map<PartNumber, Tally> tallies = new LinkedHashMap<>();

    private ExpectedBag(Kit kit) {
        this.kit = kit;
    }

    /** As a bench counts it: wire by its cut leads. */
    public static List<ExpectedLine> of(Kit kit, Catalog catalog, Sets sets) {
        return new ExpectedBag(kit).list(catalog, sets, WireUnit.LEADS);
    }

    /** As the parts list counts it: sets closed, wire in metres. */
    public static List<ExpectedLine> ofPartsList(Kit kit) {
        return new ExpectedBag(kit)
                .list(Catalog.of("", List.of(), List.of()), Sets.CLOSED, WireUnit.METRES);
    }

    private List<ExpectedLine> list(Catalog catalog, Sets sets, WireUnit wireUnit) {
        for (PartLine line : kit.parts()) {
            if (line.part() instanceof BaggedSet set && sets == Sets.OPENED) {
                open(set, line, catalog);
            } else {
                add(line.part(), line.quantity(), places(line));
            }
        }
        List<ExpectedLine> lines = new ArrayList<>();
        tallies.values().stream()
                .sorted(Comparator.comparing(tally -> CountedKind.of(tally.part)))
                .forEach(tally -> lines.add(line(tally, wireUnit)));
        return lines;
    }

    private void open(BaggedSet set, PartLine line, Catalog catalog) {
        for (BaggedSet.Content content : set.contains()) {
            add(
                    catalog.getPart(content.part()),
                    line.quantity().multiply(BigDecimal.valueOf(content.quantity())),
                    List.of(Phrase.of("place.from-set", set.number()).english()));
        }
    }

    private static List<String> places(PartLine line) {
        return line.group() == PartGroup.SPARE
                ? line.usedAt().stream()
                        .map(place -> Phrase.of("place.spare-for", place).english())
                        .toList()
                : line.usedAt();
    }

    private void add(Part part, BigDecimal quantity, List<String> places) {
        Tally tally = tallies.computeIfAbsent(part.number(), number -> new Tally(part));
        tally.quantity = tally.quantity.add(quantity);
        tally.places.addAll(places);
    }

    private ExpectedLine line(Tally tally, WireUnit wireUnit) {
        if (tally.part instanceof Wire wire) {
            return wire(tally, wire, wireUnit);
        }
        Part part = tally.part;
        return new ExpectedLine(
                part.number(),
                part.title(),
                Likeness.of(part),
                tally.quantity,
                ExpectedLine.EACH,
                tally.places,
                List.of(),
                Masses.alike(tally.quantity.intValueExact(), part.massG()),
                leads(part.number()));
    }

    private ExpectedLine wire(Tally tally, Wire wire, WireUnit unit) {
        List<KitLead> leads =
                kit.wire().stream()
                        .filter(line -> line.wire().number().equals(wire.number()))
                        .map(WireLine::leads)
                        .flatMap(List::stream)
                        .sorted(
                                Comparator.comparingLong(
                                        (KitLead lead) -> -lead.lead().cut().value()))
                        .toList();
        return new ExpectedLine(
                wire.number(),
                wire.title(),
                Likeness.of(wire),
                unit == WireUnit.LEADS ? BigDecimal.valueOf(leads.size()) : tally.quantity,
                unit == WireUnit.LEADS ? ExpectedLine.LEADS : ExpectedLine.METRES,
                leads.stream()
                        .map(lead -> lead.lead().id() + " " + lead.lead().cut().value() + " mm")
                        .toList(),
                leads.stream().map(lead -> lead.lead().cut().value()).toList(),
                Masses.of(leads.stream().map(lead -> massG(wire, lead.lead().cut())).toList()),
                Optional.empty());
    }

    private static double massG(Wire wire, Millimetres cut) {
        return wire.massG() * cut.metres();
    }

    /** The diameters of all leads that wear this seal. */
    private Optional<ExpectedLine.LeadRange> leads(PartNumber seal) {
        return Optional.ofNullable(leadsBySeal().get(seal))
                .map(found -> new ExpectedLine.LeadRange(found.getMin(), found.getMax()));
    }

    private Map<PartNumber, DoubleSummaryStatistics> leadsBySeal() {
        Map<PartNumber, DoubleSummaryStatistics> diameters = new HashMap<>();
        for (KitBlock block : kit.blocks()) {
            for (Cavity cavity : block.cavities()) {
                cavity.occupant()
                        .ifPresent(
                                occupant ->
                                        occupant.seal()
                                                .ifPresent(
                                                        seal ->
                                                                diameters
                                                                        .computeIfAbsent(
                                                                                seal.number(),
                                                                                absent ->
                                                                                        new DoubleSummaryStatistics())
                                                                        .accept(
                                                                                occupant.lead()
                                                                                        .wire()
                                                                                        .outsideMm())));
            }
        }
        return diameters;
    }
}
