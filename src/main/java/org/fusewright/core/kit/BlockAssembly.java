package org.fusewright.core.kit;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.PlacedBlock;
import org.fusewright.core.fitting.PlacedItem;
import org.fusewright.core.kit.BuildableBlocks.FormParts;
import org.fusewright.core.kit.Cavity.Occupant;
import org.fusewright.core.kit.KitBlock.Seat;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.CavityRole;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadEnd;
import org.fusewright.core.sizing.LeadEnd.InCavity;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedJob;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Fills the blocks of an arrangement cavity by cavity: one terminal and one seal for a lead, one
 * plug where there is none.
 */
final class BlockAssembly {

    private final Stock stock;
    private final BuildableBlocks buildable;
    private final Map<String, Seat> seatsByItem = new HashMap<>();
    private final Map<InCavity, Lead> leads = new HashMap<>();

    private BlockAssembly(SizedJob sized, Stock stock, BuildableBlocks buildable) {
        this.stock = stock;
        this.buildable = buildable;
        for (SizedCircuit circuit : sized.circuits()) {
            String id = circuit.id();
            circuit.device()
                    .ifPresent(
                            device ->
                                    seatsByItem.put(
                                            FittingModel.deviceItem(id),
                                            new Seat(List.of(), id, device)));
            circuit.resolved()
                    .relay()
                    .ifPresent(
                            relay ->
                                    seatsByItem.put(
                                            FittingModel.relayItem(id),
                                            new Seat(List.of(), id, relay)));
            circuit.leads().forEach(this::noteEnds);
        }
        sized.feeds().forEach(feed -> feed.leads().forEach(this::noteEnds));
    }

    static List<KitBlock> assemble(
            Arrangement arrangement, SizedJob sized, Stock stock, BuildableBlocks buildable) {
        BlockAssembly assembly = new BlockAssembly(sized, stock, buildable);
        Set<String> named = new HashSet<>();
        arrangement.blocks().forEach(placed -> placed.name().ifPresent(named::add));
        List<KitBlock> blocks = new ArrayList<>();
        int number = 0;
        for (PlacedBlock placed : arrangement.blocks()) {
            if (placed.name().isPresent()) {
                blocks.add(assembly.assemble(placed, placed.name().get()));
                continue;
            }
            do {
                number++;
            } while (named.contains("B" + number));
            blocks.add(assembly.assemble(placed, "B" + number));
        }
        return blocks;
    }

    private void noteEnds(Lead lead) {
        noteEnd(lead, lead.from());
        noteEnd(lead, lead.to());
    }

    private void noteEnd(Lead lead, LeadEnd end) {
        if (end instanceof InCavity cavity) {
            leads.putIfAbsent(cavity, lead);
        }
    }

    private KitBlock assemble(PlacedBlock placed, String id) {
        FormParts parts = buildable.partsOf(placed.form());
        List<Seat> seats = new ArrayList<>(placed.items().size());
        for (PlacedItem item : placed.items()) {
            seats.add(seat(item));
        }
        seats.sort(Comparator.comparing(seat -> seat.positions().getFirst()));
        return new KitBlock(
                id,
                placed.location(),
                parts.block(),
                parts.cap(),
                parts.wedge(),
                seats,
                cavities(id, parts, seats));
    }

    private Seat seat(PlacedItem placed) {
        Seat seat = seatsByItem.get(placed.item());
        int first = placed.firstPosition();
        List<Integer> positions =
                seat.part() instanceof Relay ? List.of(first, first + 1) : List.of(first);
        return new Seat(positions, seat.circuit(), seat.part());
    }

    private List<Cavity> cavities(String id, FormParts parts, List<Seat> seats) {
        Block block = parts.block();
        List<Cavity> cavities = new ArrayList<>();
        for (int position = 1; position <= block.positions(); position++) {
            for (char side : new char[] {'a', 'b'}) {
                String cavityId = id + "-" + position + side;
                Optional<Occupant> occupant = occupant(block, seats, position, side);
                cavities.add(
                        new Cavity(
                                cavityId,
                                position,
                                side,
                                occupant,
                                occupant.isPresent() ? Optional.empty() : parts.plug()));
            }
        }
        return cavities;
    }

    private Optional<Occupant> occupant(Block block, List<Seat> seats, int position, char side) {
        for (Seat seat : seats) {
            int within = seat.positions().indexOf(position);
            if (within >= 0) {
                CavityRole role = roleOf(seat, within, side);
                Lead lead = leads.get(new InCavity(seat.circuit(), role));
                return lead == null
                        ? Optional.empty()
                        : Optional.of(occupant(block, seat.circuit(), role, lead));
            }
        }
        return Optional.empty();
    }

    private Occupant occupant(Block block, String circuit, CavityRole role, Lead lead) {
        return new Occupant(
                role,
                circuit,
                lead,
                stock.findTerminal(block.terminalFamily(), lead.wire()),
                stock.findSeal(block.terminalFamily(), lead.wire()));
    }

    private static CavityRole roleOf(Seat seat, int within, char side) {
        if (!(seat.part() instanceof Relay relay)) {
            return side == 'a' ? CavityRole.FEED : CavityRole.LOAD;
        }
        Relay.Pinout pinout = relay.pinout();
        String terminal =
                within == 0
                        ? (side == 'a' ? pinout.firstA() : pinout.firstB())
                        : (side == 'a' ? pinout.secondA() : pinout.secondB());
        return CavityRole.ofRelayTerminal(terminal);
    }
}
