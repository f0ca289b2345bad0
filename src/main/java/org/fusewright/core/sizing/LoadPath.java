package org.fusewright.core.sizing;

import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.jspecify.annotations.Nullable;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The way from a block to the loads of one circuit and back, with sizes tried on. Through the frame
 * the way back costs nothing; by wire it is as long and as thick as the way out. The same behind
 * every device.
 */
final class LoadPath {

    /** One size on trial: the wire out and, for a wire return, the wire back. */
    record Size(LaidWire out, Optional<LaidWire> back) {

        double areaMm2() {
            return out.areaMm2();
        }

        double warmOhm(double routeM, double currentA) {
            double ohm = out.warmOhm(routeM, currentA);
            return back.isPresent() ? ohm + back.get().warmOhm(routeM, currentA) : ohm;
        }
    }

    /**
     * What a choice of sizes comes to.
     *
     * @param dropV for each single load, from the start of the trunk and back
     * @param farOhm highest resistance on the way to a load and back
     * @param chain splices between trunk and branches, on either side
     */
    record Outcome(double[] dropV, double farOhm, List<Joint> chain) {

        /** Whether each splice has a stocked part that takes its leads. */
        boolean fits() {
            for (Joint joint : chain) {
                if (!joint.fits()) {
                    return false;
                }
            }
            return true;
        }
    }

    private final Loom loom;
    private final CircuitDemand demand;
    private final Circuit circuit;
    private final LoadCosts costs;
    private final Map<LaidWire, Size> sizes = new IdentityHashMap<>();

    LoadPath(Loom loom, CircuitDemand demand) {
        this.loom = loom;
        this.demand = demand;
        this.circuit = demand.resolved().circuit();
        this.costs = new LoadCosts(loom, demand, this);
    }

    LoadCosts costs() {
        return costs;
    }

    boolean isSpliced() {
        return demand.loads().size() > 1;
    }

    boolean returnsByWire() {
        return circuit.returnPath() == ReturnPath.WIRE;
    }

    /** A wire out with what goes back beside it. */
    Size sizeOf(LaidWire out) {
        @Nullable Size known = sizes.get(out);
        if (known == null) {
            Optional<LaidWire> back = returnsByWire() ? Optional.of(back(out)) : Optional.empty();
            known = new Size(out, back);
            sizes.put(out, known);
        }
        return known;
    }

    /** The same size in ground colour, else the next thicker, else the wire out itself. */
    private LaidWire back(LaidWire out) {
        for (LaidWire ground : loom.layAll(demand.resolved().groundWires())) {
            if (ground.wire().family().equals(out.wire().family())
                    && ground.wire().size().compareTo(out.wire().size()) >= 0) {
                return ground;
            }
        }
        return out;
    }

    /** Route of the trunk: to the load, or to the splice. */
    double trunkM() {
        return isSpliced()
                ? circuit.runM()
                : circuit.runM() + demand.loads().getFirst().load().branchM();
    }

    /**
     * @param branches one for each single load; not looked at when there is only one
     */
    Outcome walk(Size trunk, Size[] branches) {
        double trunkOhm = trunk.warmOhm(trunkM(), demand.runningA());
        double trunkV = trunkOhm * demand.runningA();
        if (!isSpliced()) {
            return new Outcome(new double[] {trunkV}, trunkOhm, List.of());
        }
        double[] areasMm2 = new double[branches.length];
        for (int i = 0; i < areasMm2.length; i++) {
            areasMm2[i] = branches[i].areaMm2();
        }
        int joints = returnsByWire() ? 2 : 1;
        double[] dropV = new double[branches.length];
        double hereV = trunkV;
        double hereOhm = trunkOhm;
        double farOhm = 0;
        double restA = demand.runningA();
        List<Joint> chain = loom.splices().arrange(areasMm2, trunk.areaMm2());
        for (Joint joint : chain) {
            hereV += joints * joint.ohm() * restA;
            hereOhm += joints * joint.ohm();
            for (int i = joint.from(); i < joint.to(); i++) {
                SingleLoad load = demand.loads().get(i);
                double ohm = branches[i].warmOhm(load.load().branchM(), load.runningA());
                dropV[i] = hereV + ohm * load.runningA();
                farOhm = Math.max(farOhm, hereOhm + ohm);
                restA -= load.runningA();
            }
            if (joint.linksOn()) {
                restA = Math.max(0, restA);
                double linkOhm = trunk.warmOhm(loom.pigtailM(), restA);
                hereV += linkOhm * restA;
                hereOhm += linkOhm;
            }
        }
        return new Outcome(dropV, farOhm, chain);
    }
}
