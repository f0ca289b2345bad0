package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.RelayUse;
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
    private final CircuitDemand owner;
    private final List<CircuitDemand> borrowers;
    private final Device device;
    private final double carriedA;
    private final List<String> deviceWhy;
    private final Outlets outlets;
    private final TimeCurrentBand band;
    private final Limb atDevice;
    private final double highestA;

    /** Where each circuit's device, and its relay's trigger, get their current from; by circuit. */
    record Outlets(Map<String, Outlet> ofDevices, Map<String, Outlet> ofTriggers) {}

    /**
     * @param carriedA running current of all circuits behind the device
     */
    BranchSizing(
            Loom loom,
            CircuitDemand owner,
            List<CircuitDemand> borrowers,
            DeviceChoice.Choice choice,
            double carriedA,
            Outlets outlets) {
        this.loom = loom;
        this.job = loom.job();
        this.owner = owner;
        this.borrowers = borrowers;
        this.device = choice.device();
        this.deviceWhy = choice.why();
        this.carriedA = carriedA;
        this.outlets = outlets;
        this.band = TimeCurrentBand.of(device, job.surroundings().blockAmbient());
        Outlet outlet = outlets.ofDevices().get(owner.id());
        this.highestA = FaultCurrent.highestA(job.supply(), new Ohms(outlet.limb().leastOhm()));
        this.atDevice =
                outlet.limb()
                        .plusContact(outlet.wire().terminalOhm(), carriedA)
                        .plusDevice(device.milliohm() / 1000, carriedA);
    }

    /**
     * Where a circuit's first lead starts.
     *
     * @param limb up to there, without the terminal that the lead itself brings
     */
    private record Head(LeadEnd start, Limb limb) {

        boolean isCavity() {
            return start instanceof LeadEnd.InCavity;
        }
    }

    /** The owner's plan first, then those of the borrowers in their order. */
    List<CircuitPlan> size() {
        LeadEnd.InCavity loadSide = new LeadEnd.InCavity(owner.id(), CavityRole.LOAD);
        if (borrowers.isEmpty()) {
            return List.of(plan(owner, new Head(loadSide, atDevice), Extras.NONE));
        }
        return sizeShared(loadSide);
    }

    /**
     * What a circuit has on top of its own way.
     *
     * @param trunk its trunk, when the splice that it starts from was chosen for it
     */
    private record Extras(
            List<LaidLead> leads,
            List<SizedSplice> splices,
            boolean fit,
            Optional<LeadChoice.Choice> trunk) {

        static final Extras NONE = new Extras(List.of(), List.of(), true, Optional.empty());
    }

    private List<CircuitPlan> sizeShared(LeadEnd.InCavity loadSide) {
        List<CircuitDemand> all = new ArrayList<>(borrowers.size() + 1);
        all.add(owner);
        all.addAll(borrowers);
        LaidWire shareWire = jumperWire(owner, loom.jumperM(), carriedA);
        Limb afterShare =
                atDevice.plusContact(shareWire.terminalOhm(), carriedA)
                        .plusLead(shareWire, loom.jumperM(), carriedA);
        Optional<LeadChoice.Choice> ownTrunk =
                owner.resolved().relay().isPresent()
                        ? Optional.empty()
                        : Optional.of(trunkBehindShare(afterShare, all.size()));
        LaidWire[] wires = new LaidWire[all.size()];
        for (int i = 0; i < wires.length; i++) {
            CircuitDemand demand = all.get(i);
            wires[i] =
                    demand == owner && ownTrunk.isPresent()
                            ? ownTrunk.get().trunk()
                            : jumperWire(demand, loom.jumperM(), demand.runningA());
        }
        return joinShared(loadSide, all, shareWire, wires, afterShare, ownTrunk);
    }

    /** The joints are not chosen yet: as many, and as bad, as there can be. */
    private LeadChoice.Choice trunkBehindShare(Limb afterShare, int outs) {
        Limb worst = afterShare;
        for (int i = 1; i < outs; i++) {
            worst = worst.plusContact(loom.splices().worstOhm(), carriedA);
        }
        return new LeadChoice(loom, owner, protection(), worst, false).choose();
    }

    private List<CircuitPlan> joinShared(
            LeadEnd.InCavity loadSide,
            List<CircuitDemand> all,
            LaidWire shareWire,
            LaidWire[] wires,
            Limb afterShare,
            Optional<LeadChoice.Choice> ownTrunk) {
        String id = owner.id();
        double[] areasMm2 = new double[wires.length];
        for (int i = 0; i < wires.length; i++) {
            areasMm2[i] = wires[i].areaMm2();
        }
        List<Joint> chain = loom.splices().arrange(areasMm2, shareWire.areaMm2());
        List<LaidLead> leads = new ArrayList<>();
        leads.add(
                loom.lead(
                        id + "/share",
                        LeadRole.JUMPER,
                        shareWire,
                        loom.jumperM(),
                        carriedA,
                        loadSide,
                        new LeadEnd.AtSplice(id + "/share-1")));
        List<SizedSplice> splices = new ArrayList<>();
        List<Head> heads = new ArrayList<>();
        boolean fit = true;
        Limb here = afterShare;
        double restA = carriedA;
        for (int j = 0; j < chain.size(); j++) {
            Joint joint = chain.get(j);
            LeadEnd.AtSplice at = new LeadEnd.AtSplice(id + "/share-" + (j + 1));
            splices.add(new SizedSplice(at.splice(), joint.part(), joint.leads()));
            fit &= joint.fits();
            here = here.plusContact(joint.ohm(), restA);
            for (int i = joint.from(); i < joint.to(); i++) {
                heads.add(new Head(at, here));
                restA -= all.get(i).runningA();
            }
            if (joint.linksOn()) {
                restA = Math.max(0, restA);
                leads.add(
                        loom.lead(
                                id + "/share-link-" + (j + 1),
                                LeadRole.JUMPER,
                                shareWire,
                                loom.jumperM(),
                                restA,
                                at,
                                new LeadEnd.AtSplice(id + "/share-" + (j + 2))));
                here = here.plusLead(shareWire, loom.jumperM(), restA);
            }
        }
        List<CircuitPlan> plans = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Extras extras = i == 0 ? new Extras(leads, splices, fit, ownTrunk) : Extras.NONE;
            plans.add(plan(all.get(i), heads.get(i), extras));
        }
        return plans;
    }

    private LeadChoice.Protection protection() {
        return new LeadChoice.Protection(device, band, highestA);
    }

    private CircuitPlan plan(CircuitDemand demand, Head head, Extras extras) {
        List<LaidLead> leads = new ArrayList<>(extras.leads());
        LeadEnd trunkStart = head.start();
        Limb limb = head.limb();
        boolean trunkInCavity = head.isCavity();
        if (demand.resolved().relay().isPresent()) {
            Relay relay = demand.resolved().relay().get();
            double runningA = demand.runningA();
            LaidWire jumper = jumperWire(demand, loom.jumperM(), runningA);
            leads.add(
                    loom.lead(
                            demand.id() + "/jumper",
                            LeadRole.JUMPER,
                            jumper,
                            loom.jumperM(),
                            runningA,
                            head.start(),
                            new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_30)));
            int terminals = head.isCavity() ? 2 : 1;
            limb =
                    limb.plusContact(terminals * jumper.terminalOhm(), runningA)
                            .plusLead(jumper, loom.jumperM(), runningA)
                            .plusDevice(relay.contactMilliohm() / 1000, runningA);
            trunkStart = new LeadEnd.InCavity(demand.id(), CavityRole.RELAY_87);
            trunkInCavity = true;
        }
        LeadChoice leadChoice = new LeadChoice(loom, demand, protection(), limb, trunkInCavity);
        LeadChoice.Choice choice =
                extras.trunk().map(leadChoice::keep).orElseGet(leadChoice::choose);
        List<SizedSplice> splices = new ArrayList<>(extras.splices());
        boolean fit = new LoadLeads(loom, demand, choice).lay(trunkStart, leads, splices);
        demand.resolved().circuit().relay().ifPresent(use -> layCoilLeads(demand, use, leads));
        List<String> why = new ArrayList<>();
        if (demand == owner) {
            why.addAll(deviceWhy);
        } else {
            why.add("Circuit " + owner.id() + "'s device feeds the relay contact.");
        }
        why.add(choice.why());
        demand.resolved()
                .colourAsked()
                .ifPresent(
                        asked ->
                                why.add(
                                        "Colour "
                                                + asked
                                                + " is not stocked; "
                                                + demand.resolved().colour()
                                                + " stands in."));
        return new CircuitPlan(
                demand,
                device,
                carriedA,
                leads,
                splices,
                extras.fit() && fit,
                choice.loads(),
                highestA,
                choice.farOhm(),
                why);
    }

    /**
     * The thinnest that the device protects and that fits a cavity, else the thickest that fits.
     */
    private LaidWire jumperWire(CircuitDemand demand, double routeM, double currentA) {
        LaidWire[] wires = loom.layAll(demand.resolved().wires());
        @Nullable LaidWire thickest = null;
        for (LaidWire wire : wires) {
            if (!wire.fitsCavity()) {
                continue;
            }
            thickest = wire;
            double farOhm = atDevice.mostOhm() + wire.warmOhm(routeM, currentA);
            if (wire.servesCavity(currentA)
                    && protection().holds(wire, currentA, job.supply(), farOhm)) {
                return wire;
            }
        }
        return thickest == null ? wires[wires.length - 1] : thickest;
    }

    private void layCoilLeads(CircuitDemand demand, RelayUse use, List<LaidLead> leads) {
        String id = demand.id();
        double coilA = demand.coilA(job.supply());
        LeadEnd.InCavity coil = new LeadEnd.InCavity(id, CavityRole.RELAY_86);
        if (use.isTriggeredByController()) {
            LaidWire wire = coilWire(demand.resolved().wires(), coilA);
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
                        coilWire(groundWires, coilA),
                        use.groundM(),
                        coilA,
                        new LeadEnd.InCavity(id, CavityRole.RELAY_85),
                        new LeadEnd.At("ground")));
    }

    /** The thinnest that fits a cavity and carries the coil, else the thinnest. */
    private LaidWire coilWire(List<Wire> candidates, double coilA) {
        LaidWire[] wires = loom.layAll(candidates);
        for (LaidWire wire : wires) {
            if (wire.fitsCavity() && wire.allowedA() >= coilA) {
                return wire;
            }
        }
        return wires[0];
    }
}
