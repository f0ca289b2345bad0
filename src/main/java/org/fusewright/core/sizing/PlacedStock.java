package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Celsius;
import org.jspecify.annotations.Nullable;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What the parts of a stock do in given surroundings, whatever the job: how a wire lies, when a
 * device opens, which overload is the worst for both together. Worked out when first asked for, and
 * then kept; several threads may ask at once.
 */
final class PlacedStock {

    private final Stock stock;
    private final Surroundings surroundings;
    private final TerminalChoice terminals;
    private final SpliceChoice splices;
    private final Map<PartNumber, LaidWire> laid = new ConcurrentHashMap<>();
    private final Map<Make, LaidWire> makes = new ConcurrentHashMap<>();
    private final Map<PartNumber, TimeCurrentBand> bandsInBlock = new ConcurrentHashMap<>();
    private final Map<PartNumber, TimeCurrentBand> bandsOfMains = new ConcurrentHashMap<>();
    private final Map<TimeCurrentBand, Map<WireHeat, WorstOverload>> worstOverloads =
            new ConcurrentHashMap<>();

    PlacedStock(Stock stock, Surroundings surroundings) {
        this.stock = stock;
        this.surroundings = surroundings;
        this.terminals = new TerminalChoice(stock);
        this.splices = new SpliceChoice(stock);
    }

    SpliceChoice splices() {
        return splices;
    }

    LaidWire lay(Wire wire) {
        @Nullable LaidWire known = laid.get(wire.number());
        return known == null ? laid.computeIfAbsent(wire.number(), number -> layNew(wire)) : known;
    }

    private LaidWire layNew(Wire wire) {
        long microsPerM = stock.prices().unitPriceMicros(wire.number());
        return makes.computeIfAbsent(
                        Make.of(wire),
                        make -> LaidWire.of(wire, surroundings, microsPerM, terminals.endOf(wire)))
                .inColour(wire, microsPerM);
    }

    /** What a wire does depends on; its colour is not among it. */
    private record Make(
            double copperMm2,
            double outsideMm,
            double milliohmPerM,
            double classC,
            String insulation) {

        static Make of(Wire wire) {
            return new Make(
                    wire.copperMm2(),
                    wire.outsideMm(),
                    wire.milliohmPerM(),
                    wire.classC(),
                    wire.insulation());
        }
    }

    /** The curves of a device in a block. */
    TimeCurrentBand bandInBlock(Device device) {
        return band(bandsInBlock, device, surroundings.blockAmbient());
    }

    /** The curves of a main device, near the source. */
    TimeCurrentBand bandOfMain(Device main) {
        return band(bandsOfMains, main, surroundings.ambient());
    }

    private static TimeCurrentBand band(
            Map<PartNumber, TimeCurrentBand> bands, Device device, Celsius surrounding) {
        @Nullable TimeCurrentBand known = bands.get(device.number());
        return known == null
                ? bands.computeIfAbsent(
                        device.number(), number -> TimeCurrentBand.of(device, surrounding))
                : known;
    }

    /**
     * The overload that heats a wire most before a device opens, to be judged by the wire.
     *
     * @param band one of those that this stock has given
     */
    WorstOverload worstOverload(
            Device device, TimeCurrentBand band, LaidWire wire, double highestA) {
        if (highestA < band.clearsFromA()) {
            return WorstOverload.behind(band, device.ratingA(), wire, highestA);
        }
        // With more than that the search ends at the same current: the short is not its matter.
        Map<WireHeat, WorstOverload> ofBand =
                worstOverloads.computeIfAbsent(band, b -> new ConcurrentHashMap<>());
        @Nullable WorstOverload known = ofBand.get(wire.heat());
        return known == null
                ? ofBand.computeIfAbsent(
                        wire.heat(),
                        heat -> WorstOverload.behind(band, device.ratingA(), wire, highestA))
                : known;
    }
}
