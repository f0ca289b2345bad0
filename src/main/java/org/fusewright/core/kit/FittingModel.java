package org.fusewright.core.kit;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
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
record FittingModel(FittingTask task, PriceList prices) {

    static FittingModel of(SizedJob sized, Stock stock, Choices choices) {
        List<FittingItem> items = new ArrayList<>();
        for (SizedCircuit circuit : sized.circuits()) {
            items.addAll(itemsOf(circuit));
        }
        FittingTask task =
                new FittingTask(items, listForms(stock, choices), choices.sparePositions());
        return new FittingModel(task, stock.prices());
    }

    /** In the job's currency. */
    BigMoney money(long micros) {
        return BigMoney.ofScale(prices.currency(), micros, 6);
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
    private static List<BlockForm> listForms(Stock stock, Choices choices) {
        List<BlockForm> forms = new ArrayList<>();
        for (Block block : stock.list(Block.class)) {
            for (Cap cap : stock.list(Cap.class)) {
                if (cap.fits().contains(block.number())) {
                    forms.add(form(block, cap, stock, choices));
                }
            }
        }
        return forms;
    }

    private static BlockForm form(Block block, Cap cap, Stock stock, Choices choices) {
        PriceList prices = stock.prices();
        long wedgeMicros =
                findWedge(block, stock, choices)
                        .map(wedge -> prices.unitPriceMicros(wedge.number()))
                        .orElse(0L);
        long plugMicros =
                findPlug(block, stock, choices)
                        .map(plug -> prices.unitPriceMicros(plug.number()))
                        .orElse(0L);
        return new BlockForm(
                block.number().value(),
                cap.number().value(),
                block.positions(),
                block.relayPairs().stream().map(Block.RelayPair::first).toList(),
                cap.clearanceMm(),
                block.maxTotalA(),
                block.maxPositionA(),
                prices.unitPriceMicros(block.number())
                        + prices.unitPriceMicros(cap.number())
                        + wedgeMicros,
                2 * plugMicros);
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
