package org.fusewright.core.kit;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.job.Choices;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Every stocked block with every stocked cap that closes it, with wedge and plugs as chosen: what
 * each is made of, and what the fitting sees of it. Follows from the stock and two choices of the
 * job, so the few that there are of one stock are made once; see {@link Choice}.
 *
 * @param forms in the order of the parts
 */
record BuildableBlocks(List<FormParts> parts, List<BlockForm> forms) {
    static final int PLUGS_A_POSITION = 2;

    /** What a block of a form is made of, and what closes each empty cavity. */
    record FormParts(Block block, Cap cap, Optional<Wedge> wedge, Optional<Plug> plug) {

        /** One of each in a block. */
        List<PartNumber> all() {
            return wedge.map(w -> List.of(block.number(), cap.number(), w.number()))
                    .orElseGet(() -> List.of(block.number(), cap.number()));
        }
    }

    /** The blocks of one stock for each choice of wedges and plugs. */
    record Choice(
            BuildableBlocks bare,
            BuildableBlocks wedged,
            BuildableBlocks plugged,
            BuildableBlocks closed) {

        static Choice of(Stock stock) {
            return new Choice(
                    BuildableBlocks.of(stock, false, false),
                    BuildableBlocks.of(stock, true, false),
                    BuildableBlocks.of(stock, false, true),
                    BuildableBlocks.of(stock, true, true));
        }

        BuildableBlocks with(Choices choices) {
            return choices.lockingWedge()
                    ? choices.plugEmptyCavities() ? closed : wedged
                    : choices.plugEmptyCavities() ? plugged : bare;
        }
    }

    private static BuildableBlocks of(Stock stock, boolean wedges, boolean plugs) {
        List<FormParts> parts = new ArrayList<>();
        List<BlockForm> forms = new ArrayList<>();
        for (Block block : stock.list(Block.class)) {
            for (Cap cap : stock.list(Cap.class)) {
                if (cap.fits().contains(block.number())) {
                    FormParts of =
                            new FormParts(
                                    block,
                                    cap,
                                    wedges ? findWedge(block, stock) : Optional.empty(),
                                    plugs ? findPlug(block, stock) : Optional.empty());
                    parts.add(of);
                    forms.add(form(of, stock.prices()));
                }
            }
        }
        return new BuildableBlocks(List.copyOf(parts), List.copyOf(forms));
    }

    private static Optional<Wedge> findWedge(Block block, Stock stock) {
        return stock.findCheapest(Wedge.class, wedge -> wedge.fits().contains(block.number()));
    }

    private static Optional<Plug> findPlug(Block block, Stock stock) {
        return stock.findCheapest(Plug.class, plug -> plug.family().equals(block.terminalFamily()));
    }

    private static BlockForm form(FormParts parts, PriceList prices) {
        Block block = parts.block;
        long cost = 0;
        for (PartNumber part : parts.all()) {
            cost += prices.unitPriceMicros(part);
        }
        long plugMicros = parts.plug.map(p -> prices.unitPriceMicros(p.number())).orElse(0L);
        return new BlockForm(
                block.number().value(),
                parts.cap.number().value(),
                block.positions(),
                block.relayPairs().stream().map(Block.RelayPair::first).toList(),
                parts.cap.clearanceMm(),
                block.maxTotalA(),
                block.maxPositionA(),
                cost,
                PLUGS_A_POSITION * plugMicros);
    }

    /** What a form is made of, which may be one of these with other limits. */
    FormParts partsOf(BlockForm form) {
        for (FormParts of : parts) {
            if (of.block.number().value().equals(form.block())
                    && of.cap.number().value().equals(form.cap())) {
                return of;
            }
        }
        throw new IllegalArgumentException("no form of this model: " + form);
    }

    /** Whether all blocks take terminals of one family. */
    boolean areOfOneFamily() {
        return parts.stream().map(of -> of.block.terminalFamily()).distinct().count() <= 1;
    }
}
