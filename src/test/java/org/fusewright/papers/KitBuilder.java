package org.fusewright.papers;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.sizing.CavityRole;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadEnd;
import org.fusewright.core.sizing.LeadRole;
import org.fusewright.core.sizing.RemainingVoltage;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;
import org.fusewright.core.sizing.SizedLoad;
import org.fusewright.core.sizing.SizedSplice;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Puts a kit together block by block: cavities, leads, wire and parts follow from the circuits. */
final class KitBuilder {

    private static final CurrencyUnit EUR = CurrencyUnit.EUR;
    private static final Feed FEED = new Feed("battery", Feed.PERMANENT, 0.6, 0.15);
    private static final int SET_CRIMPS = 8;

    private final SampleParts catalog;
    private final List<Circuit> circuits = new ArrayList<>();
    private final List<KitCircuit> kitCircuits = new ArrayList<>();
    private final List<KitLead> feedLeads = new ArrayList<>();
    private final List<OpenBlock> blocks = new ArrayList<>();
    private final List<Check> checks = new ArrayList<>();
    private final Map<PartNumber, Use> uses = new TreeMap<>();
    private final Map<PartNumber, List<KitLead>> byWire = new TreeMap<>();
    private String reference = "";
    private String title = "";
    private String customer = "";

    /** A part with the places that need it. */
    private record Use(Part part, PartGroup group, List<String> usedAt) {}

    private record OpenBlock(
            String id,
            String location,
            int positions,
            List<KitBlock.Seat> seats,
            Map<String, Cavity.Occupant> occupants) {

        int next() {
            return 1 + seats.stream().mapToInt(seat -> seat.positions().size()).sum();
        }
    }

    KitBuilder(String adorn) {
        catalog = new SampleParts(adorn);
    }

    KitBuilder named(String reference, String title, String customer) {
        this.reference = reference;
        this.title = title;
        this.customer = customer;
        return this;
    }

    KitBuilder block(int positions, String location) {
        String id = "B" + (blocks.size() + 1);
        blocks.add(
                new OpenBlock(id, location, positions, new ArrayList<>(), new LinkedHashMap<>()));
        use(catalog.block(positions), PartGroup.BLOCK, id);
        use(catalog.cap(positions), PartGroup.CAP, id);
        use(catalog.wedge(positions), PartGroup.WEDGE, id);
        return this;
    }

    KitBuilder check(Check check) {
        checks.add(check);
        return this;
    }

    /** A device on the next position with one load. */
    KitBuilder circuit(
            String id, String name, DeviceKind kind, double ratingA, String size, String colour) {
        OpenBlock block = blocks.getLast();
        int position = block.next();
        Device device = catalog.device(kind, ratingA);
        seat(block, List.of(position), id, device);
        List<KitLead> leads = new ArrayList<>();
        pigtail(block, position, id, size);
        KitLead out =
                lead(
                        id,
                        "out",
                        LeadRole.TRUNK,
                        size,
                        colour,
                        1.6,
                        at(block, position, 'b'),
                        "load " + name);
        occupy(block, position, 'b', CavityRole.LOAD, id, out);
        leads.add(out);
        finish(id, name, Optional.of(device), Optional.empty(), leads);
        return this;
    }

    /** A device on the next position and a relay on the two after it. */
    KitBuilder relayCircuit(String id, String name, double ratingA, String size, String colour) {
        OpenBlock block = blocks.getLast();
        int position = block.next();
        int relayAt = position + 1;
        Device device = catalog.device(DeviceKind.FUSE, ratingA);
        Relay relay = catalog.relay();
        seat(block, List.of(position), id, device);
        seat(block, List.of(relayAt, relayAt + 1), id, relay);
        pigtail(block, position, id, size);
        KitLead jumper =
                lead(
                        id,
                        "jumper",
                        LeadRole.JUMPER,
                        size,
                        colour,
                        0.08,
                        at(block, position, 'b'),
                        at(block, relayAt, 'a'));
        KitLead out =
                lead(
                        id,
                        "out",
                        LeadRole.TRUNK,
                        size,
                        colour,
                        1.1,
                        at(block, relayAt, 'b'),
                        "load " + name);
        KitLead trigger =
                lead(
                        id,
                        "trigger",
                        LeadRole.TRIGGER,
                        "0.5",
                        "GY",
                        0.8,
                        "controller",
                        at(block, relayAt + 1, 'a'));
        KitLead ground =
                lead(
                        id,
                        "ground",
                        LeadRole.GROUND,
                        "0.5",
                        "BK",
                        0.3,
                        at(block, relayAt + 1, 'b'),
                        "ground");
        occupy(block, position, 'b', CavityRole.LOAD, id, jumper);
        occupy(block, relayAt, 'a', CavityRole.RELAY_30, id, jumper);
        occupy(block, relayAt, 'b', CavityRole.RELAY_87, id, out);
        occupy(block, relayAt + 1, 'a', CavityRole.RELAY_86, id, trigger);
        occupy(block, relayAt + 1, 'b', CavityRole.RELAY_85, id, ground);
        finish(
                id,
                name,
                Optional.of(device),
                Optional.of(relay),
                List.of(jumper, out, trigger, ground));
        return this;
    }

    Kit build() {
        List<KitBlock> closed = blocks.stream().map(this::close).toList();
        if (!circuits.isEmpty()) {
            use(catalog.mainDevice(40), PartGroup.DEVICE, "feed battery");
            use(catalog.holder(), PartGroup.HOLDER, "feed battery");
            use(catalog.splice(), PartGroup.SPLICE, "battery/splice-1");
            feedLeads.add(
                    lead(
                            "battery",
                            "main",
                            LeadRole.FEED,
                            "6",
                            "RD",
                            0.6,
                            "main device battery",
                            "battery/splice-1"));
        }
        List<PartLine> parts = new ArrayList<>();
        uses.values().stream()
                .filter(use -> use.group() == PartGroup.DEVICE)
                .toList()
                .forEach(use -> parts.add(spare(use)));
        boolean setFits = blocks.size() == 1 && blocks.getFirst().positions() == 4;
        uses.values().forEach(use -> parts.addAll(lines(use, setFits)));
        byWire.forEach((number, leads) -> parts.add(wireLine(leads)));
        if (setFits) {
            parts.add(set());
        }
        parts.sort(
                Comparator.comparing(PartLine::group).thenComparing(line -> line.part().number()));
        Money total = parts.stream().map(PartLine::extended).reduce(Money.zero(EUR), Money::plus);
        double massG = parts.stream().mapToDouble(PartLine::massG).sum();
        return new Kit(
                job(),
                "4f0c1b77",
                HexFormat.of().toHexDigits(reference.hashCode() * 0x9E3779B97F4A7C15L)
                        + "c0ffee0011223344".repeat(3),
                kitCircuits,
                List.of(feed()),
                closed,
                new Kit.Fit(
                        BigMoney.of(EUR, 41.2),
                        BigMoney.of(EUR, 41.2),
                        true,
                        ArrangementKind.CHEAPEST,
                        List.of(),
                        List.of()),
                checks,
                parts,
                byWire.values().stream().map(KitBuilder::cuts).toList(),
                new Kit.Totals(total, massG));
    }

    private Job job() {
        return new Job(
                reference,
                title,
                customer,
                EUR,
                new Supply(12, 12.2, 14.2, 12, OptionalDouble.of(25)),
                new Surroundings(new Celsius(40), new Celsius(50), 5),
                List.of(FEED),
                circuits,
                List.of(),
                new Choices(
                        List.of(DeviceKind.FUSE),
                        Optional.empty(),
                        true,
                        true,
                        0,
                        1,
                        5,
                        new Millimetres(40),
                        new Millimetres(10),
                        new Millimetres(150),
                        new Millimetres(80),
                        ArrangementKind.CHEAPEST));
    }

    private KitFeed feed() {
        boolean used = !circuits.isEmpty();
        return new KitFeed(
                new SizedFeed(
                        FEED,
                        used ? 22.5 : 0,
                        used ? 22.5 : 0,
                        used
                                ? Optional.of(new RemainingVoltage(11.93, 11.76, 10.9))
                                : Optional.empty(),
                        used ? Optional.of(catalog.mainDevice(40)) : Optional.empty(),
                        used ? Optional.of(catalog.holder()) : Optional.empty(),
                        feedLeads.stream().map(KitLead::lead).toList(),
                        used
                                ? List.of(
                                        new SizedSplice(
                                                "battery/splice-1",
                                                catalog.splice(),
                                                feedLeads.size()))
                                : List.of(),
                        List.of()),
                feedLeads);
    }

    private void finish(
            String id,
            String name,
            Optional<Device> device,
            Optional<Relay> relay,
            List<KitLead> leads) {
        Load load =
                new Load(
                        "Load",
                        LoadKind.PUMP,
                        5.2,
                        13.5,
                        1,
                        LoadKind.PUMP.usualInrush(),
                        Duty.CONTINUOUS,
                        0);
        Circuit circuit =
                new Circuit(
                        id,
                        name,
                        FEED.id(),
                        blocks.getLast().location(),
                        true,
                        1.1,
                        ReturnPath.CHASSIS,
                        Optional.empty(),
                        List.of(DeviceKind.FUSE),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        3,
                        relay.map(
                                r ->
                                        new RelayUse(
                                                "controller",
                                                0.8,
                                                0.3,
                                                Optional.empty(),
                                                Optional.empty())),
                        Optional.empty(),
                        List.of(load));
        circuits.add(circuit);
        ResolvedCircuit resolved =
                new ResolvedCircuit(
                        circuit,
                        FEED,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        new WireColour("RD"),
                        Optional.empty(),
                        relay);
        kitCircuits.add(
                new KitCircuit(
                        new SizedCircuit(
                                resolved,
                                5.2,
                                5.2,
                                26,
                                device,
                                leads.stream().map(KitLead::lead).toList(),
                                List.of(),
                                List.of(new SizedLoad("Load", 5.2, 0.2, 1.6)),
                                Optional.empty(),
                                List.of()),
                        leads));
    }

    private void seat(OpenBlock block, List<Integer> positions, String circuit, Part part) {
        if (positions.getLast() > block.positions()) {
            throw new IllegalArgumentException(block.id() + " has no room for " + circuit);
        }
        block.seats().add(new KitBlock.Seat(positions, circuit, part));
        boolean relay = part instanceof Relay;
        use(
                part,
                relay ? PartGroup.RELAY : PartGroup.DEVICE,
                block.id()
                        + "-"
                        + positions.stream().map(String::valueOf).collect(Collectors.joining("/")));
    }

    private void pigtail(OpenBlock block, int position, String circuit, String size) {
        KitLead pigtail =
                lead(
                        "battery",
                        "to-" + circuit,
                        LeadRole.PIGTAIL,
                        size,
                        "RD",
                        0.15,
                        "battery/splice-1",
                        at(block, position, 'a'));
        feedLeads.add(pigtail);
        occupy(block, position, 'a', CavityRole.FEED, circuit, pigtail);
    }

    private KitLead lead(
            String owner,
            String what,
            LeadRole role,
            String size,
            String colour,
            double routeM,
            String from,
            String to) {
        Wire wire = catalog.wire(size, colour);
        long cutMm = (long) (Math.ceil((routeM * 1.05 * 1000 + 80) / 10) * 10);
        Lead lead =
                new Lead(
                        owner + "/" + what,
                        role,
                        wire,
                        routeM,
                        new Millimetres(cutMm),
                        5.2,
                        0.1,
                        new LeadEnd.At(from),
                        new LeadEnd.At(to));
        KitLead placed = new KitLead(lead, owner, from, to);
        byWire.computeIfAbsent(wire.number(), number -> new ArrayList<>()).add(placed);
        return placed;
    }

    private void occupy(
            OpenBlock block,
            int position,
            char side,
            CavityRole role,
            String circuit,
            KitLead lead) {
        Wire wire = lead.lead().wire();
        String id = at(block, position, side);
        block.occupants()
                .put(
                        id,
                        new Cavity.Occupant(
                                role,
                                circuit,
                                lead.lead(),
                                Optional.of(catalog.terminal(wire.size())),
                                Optional.of(catalog.seal(wire.size()))));
        use(catalog.terminal(wire.size()), PartGroup.TERMINAL, id);
        use(catalog.seal(wire.size()), PartGroup.SEAL, id);
    }

    private KitBlock close(OpenBlock block) {
        List<Cavity> cavities = new ArrayList<>();
        for (int position = 1; position <= block.positions(); position++) {
            for (char side : new char[] {'a', 'b'}) {
                String id = at(block, position, side);
                Cavity.Occupant occupant = block.occupants().get(id);
                if (occupant == null) {
                    use(catalog.plug(), PartGroup.PLUG, id);
                }
                cavities.add(
                        new Cavity(
                                id,
                                position,
                                side,
                                Optional.ofNullable(occupant),
                                occupant == null ? Optional.of(catalog.plug()) : Optional.empty()));
            }
        }
        return new KitBlock(
                block.id(),
                block.location(),
                catalog.block(block.positions()),
                catalog.cap(block.positions()),
                Optional.of(catalog.wedge(block.positions())),
                block.seats(),
                cavities);
    }

    private void use(Part part, PartGroup group, String place) {
        uses.computeIfAbsent(part.number(), number -> new Use(part, group, new ArrayList<>()))
                .usedAt()
                .add(place);
    }

    private List<PartLine> lines(Use use, boolean setFits) {
        int quantity = use.usedAt().size();
        if (setFits) {
            quantity -= broughtBySet(use);
        }
        return quantity > 0
                ? List.of(line(use.part(), use.group(), new BigDecimal(quantity), use.usedAt()))
                : List.of();
    }

    private static int broughtBySet(Use use) {
        return switch (use.part().number().value()) {
            case "BW-H4", "BW-C4T" -> 1;
            case "BW-T28-S", "BW-S28-GN" -> Math.min(SET_CRIMPS, use.usedAt().size());
            default -> 0;
        };
    }

    private PartLine set() {
        List<BaggedSet.Content> contains =
                List.of(
                        new BaggedSet.Content(new PartNumber("BW-H4"), 1),
                        new BaggedSet.Content(new PartNumber("BW-C4T"), 1),
                        new BaggedSet.Content(new PartNumber("BW-T28-S"), SET_CRIMPS),
                        new BaggedSet.Content(new PartNumber("BW-S28-GN"), SET_CRIMPS));
        List<BaggedSet.Content> surplus = new ArrayList<>();
        for (BaggedSet.Content content : contains) {
            int left = content.quantity() - broughtBySet(uses.get(content.part()));
            if (left > 0) {
                surplus.add(new BaggedSet.Content(content.part(), left));
            }
        }
        BaggedSet set =
                new BaggedSet(
                        new Item(
                                new PartNumber("BW-K4T"),
                                "set: block, tall cap, crimps",
                                "Brackwater",
                                31),
                        contains);
        return new PartLine(
                set,
                PartGroup.SET,
                BigDecimal.ONE,
                List.of("B1"),
                BigMoney.of(EUR, 12.9),
                Money.of(EUR, 12.9),
                31,
                contains,
                surplus);
    }

    private static PartLine spare(Use device) {
        return line(device.part(), PartGroup.SPARE, BigDecimal.ONE, List.of("spares"));
    }

    private static PartLine wireLine(List<KitLead> leads) {
        List<String> ids = leads.stream().map(lead -> lead.lead().id()).toList();
        BigDecimal metres = BigDecimal.valueOf(cuts(leads).total().value(), 3);
        return line(leads.getFirst().lead().wire(), PartGroup.WIRE, metres, ids);
    }

    private static WireLine cuts(List<KitLead> leads) {
        Millimetres total =
                leads.stream()
                        .map(lead -> lead.lead().cut())
                        .reduce(new Millimetres(0), Millimetres::plus);
        return new WireLine(leads.getFirst().lead().wire(), leads, total);
    }

    private static PartLine line(
            Part part, PartGroup group, BigDecimal quantity, List<String> usedAt) {
        return new PartLine(
                part,
                group,
                quantity,
                usedAt,
                BigMoney.of(EUR, 1),
                Money.of(EUR, 1),
                quantity.doubleValue() * part.massG(),
                List.of(),
                List.of());
    }

    private static String at(OpenBlock block, int position, char side) {
        return block.id() + "-" + position + side;
    }
}
