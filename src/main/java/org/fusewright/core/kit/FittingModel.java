package org.fusewright.core.kit;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Place;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedJob;
import org.joda.money.BigMoney;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The sized job in the words of the fitting: what needs room, and which blocks could give it. */
record FittingModel(FittingTask task, Stock stock, List<FormParts> parts) {

    static final int PLUGS_A_POSITION = 2;

    /** What a block of a form is made of, and what closes each empty cavity. */
    record FormParts(Block block, Cap cap, Optional<Wedge> wedge, Optional<Plug> plug) {

        /** One of each in a block. */
        List<PartNumber> all() {
            return wedge.map(w -> List.of(block.number(), cap.number(), w.number()))
                    .orElseGet(() -> List.of(block.number(), cap.number()));
        }
    }

    static FittingModel of(SizedJob sized, Stock stock, Choices choices) {
        List<FittingItem> items = new ArrayList<>();
        for (SizedCircuit circuit : sized.circuits()) {
            items.addAll(itemsOf(circuit));
        }
        List<FormParts> parts = listParts(stock, choices);
        List<BlockForm> forms = new ArrayList<>(parts.size());
        for (FormParts of : parts) {
            forms.add(form(of, stock));
        }
        FittingTask task = new FittingTask(items, forms, choices.sparePositions());
        return new FittingModel(task, stock, parts);
    }

    PriceList prices() {
        return stock.prices();
    }

    /** What a form is made of, which may be one of the task with other limits. */
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
    boolean isOfOneFamily() {
        return parts.stream().map(of -> of.block.terminalFamily()).distinct().count() <= 1;
    }

    /** In the job's currency. */
    BigMoney money(long micros) {
        return BigMoney.ofScale(prices().currency(), micros, 6);
    }

    private static Place place(BlockPlace place) {
        return new Place(place.block(), place.part(), place.position(), place.fixed());
    }

    static String deviceItem(String circuit) {
        return circuit + "/device";
    }

    static String relayItem(String circuit) {
        return circuit + "/relay";
    }

    private static List<FittingItem> itemsOf(SizedCircuit circuit) {
        List<FittingItem> items = new ArrayList<>();
        String location = circuit.resolved().circuit().location();
        circuit.device()
                .ifPresent(
                        device ->
                                items.add(
                                        new FittingItem(
                                                deviceItem(circuit.id()),
                                                Width.POSITION,
                                                device.heightMm(),
                                                reckoned(circuit.carriedA()),
                                                location,
                                                Optional.empty(),
                                                circuit.resolved()
                                                        .circuit()
                                                        .place()
                                                        .map(FittingModel::place))));
        circuit.resolved()
                .relay()
                .ifPresent(
                        relay ->
                                items.add(
                                        new FittingItem(
                                                relayItem(circuit.id()),
                                                Width.RELAY_PAIR,
                                                relay.heightMm(),
                                                reckoned(circuit.runningA()),
                                                location,
                                                Optional.of(deviceItem(deviceOwner(circuit))),
                                                circuit.resolved()
                                                        .circuit()
                                                        .relay()
                                                        .flatMap(RelayUse::place)
                                                        .map(FittingModel::place))));
        return items;
    }

    /** No block takes more by far; beyond it the search need not tell currents apart. */
    private static double reckoned(double currentA) {
        return Math.min(currentA, 100_000);
    }

    private static String deviceOwner(SizedCircuit circuit) {
        return circuit.resolved().circuit().contactFrom().orElse(circuit.id());
    }

    /** Every stocked block with every stocked cap that closes it; wedge and plugs as chosen. */
    private static List<FormParts> listParts(Stock stock, Choices choices) {
        List<FormParts> parts = new ArrayList<>();
        for (Block block : stock.list(Block.class)) {
            for (Cap cap : stock.list(Cap.class)) {
                if (cap.fits().contains(block.number())) {
                    parts.add(
                            new FormParts(
                                    block,
                                    cap,
                                    findWedge(block, stock, choices),
                                    findPlug(block, stock, choices)));
                }
            }
        }
        return parts;
    }

    private static BlockForm form(FormParts parts, Stock stock) {
        PriceList prices = stock.prices();
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

    static Optional<Wedge> findWedge(Block block, Stock stock, Choices choices) {
        return choices.lockingWedge()
                ? stock.findCheapest(Wedge.class, wedge -> wedge.fits().contains(block.number()))
                : Optional.empty();
    }

    static Optional<Plug> findPlug(Block block, Stock stock, Choices choices) {
        return choices.plugEmptyCavities()
                ? stock.findCheapest(
                        Plug.class, plug -> plug.family().equals(block.terminalFamily()))
                : Optional.empty();
    }
}
