package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.Supply;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedPlan.Limb;
import org.fusewright.core.sizing.FeedPlan.Outlet;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything behind one device: the leads of the circuit that owns it, and of circuits whose relay
 * contact it feeds as well. One wire per cavity (common practice): what is shared is spliced
 * outside the block.
 */
final class BranchSizing {

    private final Loom loom;
    private final Job job;
    private final List<CircuitWay> ways = new ArrayList<>();
    private final Device device;
    private final double carriedA;
    private final Outlets outlets;
    private final Protection protection;
    private final Limb atDevice;
    private @Nullable SharedLeads shared;

    /**
     * Where each circuit's device, and its relay's trigger, get their current from; by circuit.
     *
     * @param mainDevices of each circuit's feed
     */
    record Outlets(
            Map<String, Outlet> ofDevices,
            Map<String, Outlet> ofTriggers,
            Map<String, Device> mainDevices) {

        /** Rating of the main device before a circuit's own, in amperes. */
        double mainRatingA(String circuit) {
            return mainDevices.get(circuit).ratingA();
        }

        /** Prospective short-circuit current right behind a circuit's device, in amperes. */
        double highestA(String circuit, Supply supply) {
            return FaultCurrent.highestA(
                    supply, new Ohms(ofDevices.get(circuit).limb().leastOhm()));
        }
    }

    /**
     * The wires that start at the device and behind each relay, in the order of owner and
     * borrowers.
     *
     * @param share from a shared device to where its circuits part
     * @param jumpers to each circuit's relay, where it has one
     */
    record Wires(
            Optional<LaidWire> share, List<Optional<LaidWire>> jumpers, List<LaidWire> trunks) {

        Wires {
            jumpers = List.copyOf(jumpers);
            trunks = List.copyOf(trunks);
        }

        Wires withTrunk(int circuit, LaidWire trunk) {
            List<LaidWire> changed = new ArrayList<>(trunks);
            changed.set(circuit, trunk);
            return new Wires(share, jumpers, changed);
        }

        Wires withShare(LaidWire wire) {
            return new Wires(Optional.of(wire), jumpers, trunks);
        }
    }

    /**
     * What came out.
     *
     * @param plans the owner's first, then those of the borrowers in their order
     * @param micros cost of device and leads behind it in millionths of the currency; coil leads,
     *     which no choice changes, left out
     * @param missed the first limit that its leads miss; empty when they keep all
     */
    record Branch(
            Device device,
            List<CircuitPlan> plans,
            Wires wires,
            long micros,
            Optional<Missed> missed) {}

    /**
     * @param carriedA running current of all circuits behind the device
     */
    BranchSizing(
            Loom loom,
            CircuitDemand owner,
            List<CircuitDemand> borrowers,
            Device device,
            double carriedA,
            Outlets outlets) {
        this.loom = loom;
        this.job = loom.job();
        this.device = device;
        this.carriedA = carriedA;
        this.outlets = outlets;
        this.protection = new Protection(loom, device, outlets.highestA(owner.id(), job.supply()));
        Outlet outlet = outlets.ofDevices().get(owner.id());
        this.atDevice =
                outlet.limb()
                        .plusContact(outlet.wire().terminalOhm(), carriedA)
                        .plusDevice(device.milliohm() / 1000, carriedA);
        ways.add(new CircuitWay(loom, owner, protection));
        for (CircuitDemand borrower : borrowers) {
            ways.add(new CircuitWay(loom, borrower, protection));
        }
    }

    private boolean isShared() {
        return ways.size() > 1;
    }

    private SharedLeads shared() {
        if (shared == null) {
            shared = new SharedLeads(loom, ways, protection, atDevice, carriedA);
        }
        return shared;
    }

    Device device() {
        return device;
    }

    private CircuitDemand owner() {
        return ways.getFirst().demand();
    }

    private long deviceMicros() {
        return loom.stock().prices().unitPriceMicros(device.number());
    }

    /** No sizing behind this device costs less. */
    long leastMicros() {
        return deviceMicros()
                + (isShared() ? shared().leastMicros() : ways.getFirst().leastMicros());
    }

    Branch size() {
        return isShared() ? sizeShared() : sizeAlone();
    }

    private Branch sizeAlone() {
        CircuitWay.Choice way = ways.getFirst().cheapest(Upstream.atCavity(atDevice));
        CircuitPlan plan =
                plan(
                        owner(),
                        way,
                        loadSide(),
                        Optional.empty(),
                        new ArrayList<>(),
                        List.of(),
                        true);
        return new Branch(
                device,
                List.of(plan),
                new Wires(Optional.empty(), List.of(way.jumper()), List.of(way.leads().trunk())),
                deviceMicros() + way.micros(),
                way.missed());
    }

    private LeadEnd.InCavity loadSide() {
        return new LeadEnd.InCavity(owner().id(), CavityRole.LOAD);
    }

    private Branch sizeShared() {
        SharedLeads.Choice choice = shared().choose();
        List<LaidLead> leads = new ArrayList<>();
        List<SizedSplice> splices = new ArrayList<>();
        List<LeadEnd> starts = new ArrayList<>();
        boolean fit = layShared(choice, leads, splices, starts);
        Optional<LaidLead> shareLead = Optional.of(leads.getFirst());
        List<CircuitPlan> plans = new ArrayList<>();
        List<Optional<LaidWire>> jumpers = new ArrayList<>();
        List<LaidWire> trunks = new ArrayList<>();
        for (int i = 0; i < ways.size(); i++) {
            CircuitDemand demand = ways.get(i).demand();
            CircuitWay.Choice way = choice.ways().get(i);
            plans.add(
                    i == 0
                            ? plan(
                                    demand,
                                    way,
                                    starts.get(i),
                                    Optional.empty(),
                                    leads,
                                    splices,
                                    fit)
                            : plan(
                                    demand,
                                    way,
                                    starts.get(i),
                                    shareLead,
                                    new ArrayList<>(),
                                    List.of(),
                                    true));
            jumpers.add(way.jumper());
            trunks.add(way.leads().trunk());
        }
        return new Branch(
                device,
                plans,
                new Wires(Optional.of(choice.share()), jumpers, trunks),
                deviceMicros() + choice.micros(),
                choice.missed());
    }

    /** Adds shared lead, splices and links, and where each circuit starts. */
    private boolean layShared(
            SharedLeads.Choice choice,
            List<LaidLead> leads,
            List<SizedSplice> splices,
            List<LeadEnd> starts) {
        String id = owner().id();
        leads.add(
                loom.lead(
                        id + "/share",
                        LeadRole.JUMPER,
                        choice.share(),
                        loom.pigtailM(),
                        carriedA,
                        loadSide(),
                        new LeadEnd.AtSplice(id + "/share-1")));
        boolean fit = true;
        double restA = carriedA;
        for (int j = 0; j < choice.chain().size(); j++) {
            Joint joint = choice.chain().get(j);
            LeadEnd.AtSplice at = new LeadEnd.AtSplice(id + "/share-" + (j + 1));
            splices.add(new SizedSplice(at.splice(), joint.part(), joint.leads()));
            fit &= joint.fits();
            for (int i = joint.from(); i < joint.to(); i++) {
                starts.add(at);
                restA -= ways.get(i).demand().runningA();
            }
            if (joint.linksOn()) {
                restA = Math.max(0, restA);
                leads.add(
                        loom.lead(
                                id + "/share-link-" + (j + 1),
                                LeadRole.JUMPER,
                                choice.share(),
                                loom.pigtailM(),
                                restA,
                                at,
                                new LeadEnd.AtSplice(id + "/share-" + (j + 2))));
            }
        }
        return fit;
    }

    /**
     * @param passed the shared lead, when another circuit lays it
     * @param leads laid for it already; its own are added
     */
    private CircuitPlan plan(
            CircuitDemand demand,
            CircuitWay.Choice way,
            LeadEnd start,
            Optional<LaidLead> passed,
            List<LaidLead> leads,
            List<SizedSplice> splicesBefore,
            boolean fitBefore) {
        LeadEnd trunkStart = start;
        if (way.jumper().isPresent()) {
            boolean fromCavity = start instanceof LeadEnd.InCavity;
            leads.add(
                    loom.lead(
                            demand.id() + "/jumper",
                            LeadRole.JUMPER,
                            way.jumper().get(),
                            CircuitWay.jumperM(loom, fromCavity),
                            demand.runningA(),
                            start,
                            new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_30)));
            trunkStart = new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_87);
        }
        List<SizedSplice> splices = new ArrayList<>(splicesBefore);
        boolean fit = new LoadLeads(loom, demand, way.leads()).lay(trunkStart, leads, splices);
        demand.resolved().circuit().relay().ifPresent(use -> layCoilLeads(demand, use, leads));
        return new CircuitPlan(
                demand,
                device,
                carriedA,
                leads,
                passed,
                splices,
                fitBefore && fit,
                way.leads().loads(),
                protection.highestA(),
                way.leads().farOhm(),
                List.of());
    }

    /** What settled wires would miss behind this device; empty when they would do. */
    Optional<Missed> findMissed(Wires wires) {
        return wires.share().isPresent()
                ? shared().findMissed(wires.share().get(), wires.jumpers(), wires.trunks())
                : ways.getFirst()
                        .findMissed(
                                Upstream.atCavity(atDevice),
                                wires.jumpers().getFirst(),
                                wires.trunks().getFirst());
    }

    /** Cost of one circuit's trunk alone. */
    long trunkMicros(int circuit, LaidWire trunk) {
        return ways.get(circuit).trunkMicros(trunk, !isShared());
    }

    private void layCoilLeads(CircuitDemand demand, RelayUse use, List<LaidLead> leads) {
        String id = demand.id();
        double coilA = demand.coilA(job.supply());
        LeadEnd.InCavity coil = new LeadEnd.InCavity(id, CavityRole.RELAY_86);
        if (use.isTriggeredByController()) {
            LaidWire wire = coilWire(id, "/trigger", demand.resolved().wires(), coilA);
            LeadEnd from = new LeadEnd.At(RelayUse.CONTROLLER);
            leads.add(
                    loom.lead(
                            id + "/trigger",
                            LeadRole.TRIGGER,
                            wire,
                            use.triggerM(),
                            coilA,
                            from,
                            coil));
        } else {
            Outlet outlet = outlets.ofTriggers().get(id);
            leads.add(
                    loom.lead(
                            id + "/trigger",
                            LeadRole.TRIGGER,
                            outlet.wire(),
                            outlet.routeM(),
                            coilA,
                            outlet.from(),
                            coil));
        }
        List<Wire> groundWires =
                demand.resolved().groundWires().isEmpty()
                        ? demand.resolved().wires()
                        : demand.resolved().groundWires();
        leads.add(
                loom.lead(
                        id + "/ground",
                        LeadRole.GROUND,
                        coilWire(id, "/ground", groundWires, coilA),
                        use.groundM(),
                        coilA,
                        new LeadEnd.InCavity(id, CavityRole.RELAY_85),
                        new LeadEnd.At("ground")));
    }

    /** The thinnest that fits a cavity and carries the coil, else the thinnest. */
    private LaidWire coilWire(String circuit, String lead, List<Wire> candidates, double coilA) {
        LaidWire[] wires = loom.layFor(circuit, lead, candidates);
        for (LaidWire wire : wires) {
            if (wire.fitsCavity() && wire.allowedA() >= coilA) {
                return wire;
            }
        }
        return wires[0];
    }
}
