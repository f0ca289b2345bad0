package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.Stock;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which stocked terminals may end a wire in a sealed cavity: in each family that a stocked block
 * uses, the one that the stock gives for the wire, when a seal of that family closes on it too.
 * Which block a lead ends in is not known yet, so with several families the weakest counts.
 */
final class TerminalChoice {

    private final Stock stock;
    private final Set<String> families = new TreeSet<>();

    TerminalChoice(Stock stock) {
        this.stock = stock;
        for (Block block : stock.list(Block.class)) {
            families.add(block.terminalFamily());
        }
    }

    /**
     * What ends a wire in a cavity.
     *
     * @param fits whether any terminal takes it
     * @param terminalA the least that a terminal on it carries; 0 when none fits
     * @param terminalOhm the highest resistance of crimp and contact; 0 when none fits
     * @param micros what terminal and seal cost at most, in millionths of the currency
     */
    record CavityEnd(boolean fits, double terminalA, double terminalOhm, long micros) {

        static final CavityEnd NONE = new CavityEnd(false, 0, 0, 0);
    }

    CavityEnd endOf(Wire wire) {
        boolean fits = false;
        double terminalA = Double.POSITIVE_INFINITY;
        double terminalOhm = 0;
        long micros = 0;
        for (String family : families) {
            Optional<Terminal> terminal = stock.findTerminal(family, wire);
            Optional<Seal> seal = stock.findSeal(family, wire);
            if (terminal.isPresent() && seal.isPresent()) {
                fits = true;
                terminalA = Math.min(terminalA, terminal.get().maxCurrentA());
                terminalOhm = Math.max(terminalOhm, terminal.get().contactMilliohm() / 1000);
                micros =
                        Math.max(
                                micros,
                                stock.prices().unitPriceMicros(terminal.get().number())
                                        + stock.prices().unitPriceMicros(seal.get().number()));
            }
        }
        return fits ? new CavityEnd(true, terminalA, terminalOhm, micros) : CavityEnd.NONE;
    }
}
