package org.fusewright.core.sizing;

import org.fusewright.core.sizing.LoadPath.Size;
import org.fusewright.core.sizing.SpliceChoice.Joint;

import java.util.List;

/** Lays the chosen sizes as leads from a block to the loads of one circuit, and back. */
final class LoadLeads {

    private final Loom loom;
    private final CircuitDemand demand;
    private final LeadChoice.Choice choice;
    private final LoadPath path;

    LoadLeads(Loom loom, CircuitDemand demand, LeadChoice.Choice choice) {
        this.loom = loom;
        this.demand = demand;
        this.choice = choice;
        this.path = loom.pathOf(demand);
    }

    /** Adds leads and splices; answers whether every splice has a part that takes its leads. */
    boolean lay(LeadEnd start, List<LaidLead> leads, List<SizedSplice> splices) {
        if (path.isSpliced()) {
            return laySpliced(start, leads, splices);
        }
        String id = demand.id();
        LeadEnd.At load = atLoad(demand.loads().getFirst());
        double runningA = demand.runningA();
        leads.add(
                loom.lead(
                        id + "/out",
                        LeadRole.TRUNK,
                        choice.trunk(),
                        path.trunkM(),
                        runningA,
                        start,
                        load));
        choice.trunkSize()
                .back()
                .ifPresent(
                        back ->
                                leads.add(
                                        loom.lead(
                                                id + "/return",
                                                LeadRole.RETURN,
                                                back,
                                                path.trunkM(),
                                                runningA,
                                                load,
                                                new LeadEnd.At("ground"))));
        return true;
    }

    private boolean laySpliced(LeadEnd start, List<LaidLead> leads, List<SizedSplice> splices) {
        String id = demand.id();
        boolean fit =
                new Side(
                                id + "/splice-",
                                id + "/branch-",
                                id + "/link-",
                                LeadRole.BRANCH,
                                choice.trunk(),
                                false)
                        .lay(
                                loom.lead(
                                        id + "/out",
                                        LeadRole.TRUNK,
                                        choice.trunk(),
                                        path.trunkM(),
                                        demand.runningA(),
                                        start,
                                        new LeadEnd.AtSplice(id + "/splice-1")),
                                leads,
                                splices);
        if (choice.trunkSize().back().isEmpty()) {
            return fit;
        }
        LaidWire back = choice.trunkSize().back().get();
        return new Side(
                                id + "/return-splice-",
                                id + "/return-",
                                id + "/return-link-",
                                LeadRole.RETURN,
                                back,
                                true)
                        .lay(
                                loom.lead(
                                        id + "/return",
                                        LeadRole.RETURN,
                                        back,
                                        path.trunkM(),
                                        demand.runningA(),
                                        new LeadEnd.AtSplice(id + "/return-splice-1"),
                                        new LeadEnd.At("ground")),
                                leads,
                                splices)
                && fit;
    }

    /** One side of the loads: out, or back. */
    private final class Side {

        private final String splice;
        private final String branch;
        private final String link;
        private final LeadRole role;
        private final LaidWire trunk;
        private final boolean back;

        Side(
                String splice,
                String branch,
                String link,
                LeadRole role,
                LaidWire trunk,
                boolean back) {
            this.splice = splice;
            this.branch = branch;
            this.link = link;
            this.role = role;
            this.trunk = trunk;
            this.back = back;
        }

        boolean lay(LaidLead trunkLead, List<LaidLead> leads, List<SizedSplice> splices) {
            leads.add(trunkLead);
            double[] areasMm2 = new double[choice.branches().length];
            for (int i = 0; i < areasMm2.length; i++) {
                areasMm2[i] = wireOf(choice.branches()[i]).areaMm2();
            }
            List<Joint> chain = loom.splices().arrange(areasMm2, trunk.areaMm2());
            boolean fit = true;
            double restA = demand.runningA();
            for (int j = 0; j < chain.size(); j++) {
                Joint joint = chain.get(j);
                LeadEnd.AtSplice at = new LeadEnd.AtSplice(splice + (j + 1));
                splices.add(new SizedSplice(at.splice(), joint.part(), joint.leads()));
                fit &= joint.fits();
                for (int i = joint.from(); i < joint.to(); i++) {
                    SingleLoad load = demand.loads().get(i);
                    restA -= load.runningA();
                    leads.add(
                            towardsLoad(
                                    branch + (i + 1),
                                    wireOf(choice.branches()[i]),
                                    load.load().branchM(),
                                    load.runningA(),
                                    at,
                                    atLoad(load)));
                }
                if (joint.linksOn()) {
                    leads.add(
                            towardsLoad(
                                    link + (j + 1),
                                    trunk,
                                    loom.pigtailM(),
                                    Math.max(0, restA),
                                    at,
                                    new LeadEnd.AtSplice(splice + (j + 2))));
                }
            }
            return fit;
        }

        private LaidWire wireOf(Size size) {
            return back ? size.back().orElseThrow() : size.out();
        }

        private LaidLead towardsLoad(
                String id,
                LaidWire wire,
                double routeM,
                double currentA,
                LeadEnd near,
                LeadEnd far) {
            return loom.lead(
                    id, role, wire, routeM, currentA, back ? far : near, back ? near : far);
        }
    }

    static LeadEnd.At atLoad(SingleLoad load) {
        return new LeadEnd.At("load " + load.name());
    }
}
