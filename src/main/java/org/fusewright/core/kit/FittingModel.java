package org.fusewright.core.kit;

import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Place;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.BlockPlace;
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
record FittingModel(FittingTask task, Stock stock, BuildableBlocks blocks) {

    static FittingModel of(
            SizedJob sized, Stock stock, BuildableBlocks blocks, int sparePositions) {
        List<FittingItem> items = new ArrayList<>();
        for (SizedCircuit circuit : sized.circuits()) {
            addItems(circuit, items);
        }
        return new FittingModel(
                new FittingTask(items, blocks.forms(), sparePositions), stock, blocks);
    }

    PriceList prices() {
        return stock.prices();
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

    private static void addItems(SizedCircuit circuit, List<FittingItem> items) {
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
    }

    /** No block takes more by far; beyond it the search need not tell currents apart. */
    private static double reckoned(double currentA) {
        return Math.min(currentA, 100_000);
    }

    private static String deviceOwner(SizedCircuit circuit) {
        return circuit.resolved().circuit().contactFrom().orElse(circuit.id());
    }
}
