package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.sizing.LoadPath.Size;

import java.util.List;

/**
 * What the leads to the loads of one circuit cost, in millionths of the currency, whatever they
 * lose. The same behind every device: worked out once for a circuit.
 */
final class LoadCosts {

    /** More than any leads cost: what stands where no stocked wire is protected. */
    static final long NONE_MICROS = 1L << 50;

    private final Loom loom;
    private final CircuitDemand demand;
    private final LoadPath path;
    private final Millimetres trunkCut;
    private final Millimetres[] branchCuts;
    private final double branchesM;

    LoadCosts(Loom loom, CircuitDemand demand, LoadPath path) {
        this.loom = loom;
        this.demand = demand;
        this.path = path;
        this.trunkCut = loom.cut(path.trunkM());
        this.branchCuts = new Millimetres[demand.loads().size()];
        double lengthM = 0;
        for (int i = 0; i < branchCuts.length; i++) {
            double branchM = demand.loads().get(i).load().branchM();
            branchCuts[i] = loom.cut(branchM);
            lengthM += branchM;
        }
        this.branchesM = lengthM;
    }

    /** The trunk alone, out and back. */
    long trunkMicros(Size trunk, boolean fromCavity) {
        return bothWays(trunk, trunkCut, fromCavity ? 1 : 0);
    }

    /** One branch, out and back. */
    long branchMicros(Size branch, int load) {
        return bothWays(branch, branchCuts[load], 0);
    }

    /** A link between two splices, out and back. */
    long linkMicros(Size trunk) {
        return bothWays(trunk, loom.pigtailCut(), 0);
    }

    private long bothWays(Size size, Millimetres cut, int cavityEnds) {
        long micros = loom.micros(size.out(), cut, cavityEnds);
        return size.back().isPresent() ? micros + loom.micros(size.back().get(), cut, 0) : micros;
    }

    /** No splices between trunk and branches cost less. */
    long leastSpliceMicros() {
        long leastMicros = loom.splices().leastMicros();
        return path.returnsByWire() ? 2 * leastMicros : leastMicros;
    }

    /** No choice of branches and of what joins them costs less behind a device of this rating. */
    long leastBranchMicros(double ratingA) {
        if (!path.isSpliced()) {
            return 0;
        }
        long leastPerM = NONE_MICROS;
        for (LaidWire wire : loom.layAll(demand.resolved().wires())) {
            if (wire.isProtectedBy(ratingA)) {
                leastPerM = Math.min(leastPerM, wire.microsPerM());
            }
        }
        return leastPerM == NONE_MICROS
                ? NONE_MICROS
                : leastSpliceMicros() + (long) (branchesM * leastPerM);
    }

    /** No leads from a cavity to the loads cost less behind a device of this rating. */
    long leastMicros(double ratingA) {
        long least = NONE_MICROS;
        List<Wire> trunks = demand.resolved().trunkWires();
        for (LaidWire wire : loom.layFor(demand.id(), "/out", trunks)) {
            if (wire.isProtectedBy(ratingA)) {
                least = Math.min(least, trunkMicros(path.sizeOf(wire), true));
            }
        }
        return least + leastBranchMicros(ratingA);
    }
}
