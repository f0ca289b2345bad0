package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which stocked terminals end a wire in a sealed cavity: the crimp takes its copper area, and a
 * seal of the same family takes its outside diameter, in a family that a stocked block uses.
 * Cheapest first, then by number. Which block a lead ends in is not known yet, so any such family
 * will do.
 */
final class TerminalChoice {

    private final List<Terminal> terminals = new ArrayList<>();
    private final List<Seal> seals;

    TerminalChoice(Stock stock) {
        Set<String> families = new HashSet<>();
        for (Block block : stock.list(Block.class)) {
            families.add(block.terminalFamily());
        }
        for (Terminal terminal : stock.list(Terminal.class)) {
            if (families.contains(terminal.family())) {
                terminals.add(terminal);
            }
        }
        PriceList prices = stock.prices();
        terminals.sort(
                Comparator.comparing((Terminal t) -> prices.unitPriceOrZero(t.number()))
                        .thenComparing(Terminal::number));
        seals = stock.list(Seal.class);
    }

    List<Terminal> listFor(Wire wire) {
        List<Terminal> fitting = new ArrayList<>();
        for (Terminal terminal : terminals) {
            if (terminal.accepts(wire.copperMm2()) && isSealed(terminal.family(), wire)) {
                fitting.add(terminal);
            }
        }
        return List.copyOf(fitting);
    }

    private boolean isSealed(String family, Wire wire) {
        for (Seal seal : seals) {
            if (seal.family().equals(family) && seal.accepts(wire.outsideMm())) {
                return true;
            }
        }
        return false;
    }
}
