package org.fusewright.core.quote;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.pricing.PriceList;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the parts and the work of a kit are sold for at least, in minor units: each part at the best
 * price that any design's quantity could reach. A part that comes in bags counts for no more than
 * its share of the bag, so that a bag is never cheaper than what it holds.
 */
final class PriceFloor {

    private static final double HALF = 0.5;

    /** Lines for work and shipping, and a few to be safe. */
    private static final int OTHER_LINES = 16;

    private final PriceBook book;
    private final MarkUps markUps;
    private final PurchaseCost costs;
    private final CurrencyUnit currency;
    private final int kits;
    private final TaxKind tax;
    private final boolean shipped;
    private final Map<PartNumber, Double> most;
    private final Map<PartNumber, Double> units = new HashMap<>();
    private final Map<BenchWork, Double> work = new EnumMap<>(BenchWork.class);
    private final int lines;

    /**
     * @param most of each part that any design's shares hold together, in one kit
     * @param items how many devices and relays sit in blocks, and spare positions
     */
    PriceFloor(
            PriceBook book,
            MarkUps markUps,
            PurchaseCost costs,
            CurrencyUnit currency,
            int kits,
            TaxKind tax,
            boolean shipped,
            Map<PartNumber, Double> most,
            int items) {
        this.book = book;
        this.markUps = markUps;
        this.costs = costs;
        this.currency = currency;
        this.kits = kits;
        this.tax = tax;
        this.shipped = shipped;
        this.most = new HashMap<>(most);
        int widest = 1;
        List<Part> ofBlocks = new ArrayList<>();
        List<BaggedSet> sets = new ArrayList<>();
        for (Part part : book.catalog().listParts()) {
            switch (part) {
                case Block block -> {
                    widest = Math.max(widest, block.positions());
                    ofBlocks.add(block);
                }
                case Cap cap -> ofBlocks.add(cap);
                case Wedge wedge -> ofBlocks.add(wedge);
                case Plug plug -> ofBlocks.add(plug);
                case BaggedSet set -> sets.add(set);
                default -> {}
            }
        }
        for (Part part : ofBlocks) {
            int count = part instanceof Plug ? 2 * widest * items : items;
            this.most.put(part.number(), (double) count);
        }
        this.most.keySet().forEach(part -> units.put(part, loose(part)));
        sets.forEach(this::shareOut);
        for (LabourTask task : book.labour()) {
            BenchWork.parse(task.code()).ifPresent(kind -> work.put(kind, priceOf(task)));
        }
        lines = most.size() + 4 * items + sets.size() + OTHER_LINES;
    }

    private double loose(PartNumber part) {
        return book.catalog()
                .findPart(part)
                .map(known -> unit(part, PartGroup.of(known).code(), most.get(part)))
                .orElse(0.0);
    }

    private double unit(PartNumber part, String group, double quantity) {
        BigDecimal all = BigDecimal.valueOf(Math.ceil(quantity * kits));
        return costs.findUnit(part, all)
                .map(unit -> minor(unit.price()) * factor(markUps.findPercent(part, group)))
                .orElse(0.0);
    }

    private double minor(BigMoney price) {
        return price.getAmount().movePointRight(currency.getDecimalPlaces()).doubleValue();
    }

    private static double factor(Optional<BigDecimal> percent) {
        return 1 + percent.map(BigDecimal::doubleValue).orElse(0.0) / 100;
    }

    /** Lowers the prices of what a bag holds until the bag is worth no more than it costs. */
    private void shareOut(BaggedSet set) {
        double worth = 0;
        double pieces = 0;
        for (BaggedSet.Content content : set.contains()) {
            worth += content.quantity() * units.getOrDefault(content.part(), 0.0);
            pieces += most.getOrDefault(content.part(), 0.0);
        }
        double price = unit(set.number(), PartGroup.SET.code(), pieces);
        if (costs.findUnit(set.number(), BigDecimal.ONE).isPresent() && price < worth) {
            for (BaggedSet.Content content : set.contains()) {
                double share = price / worth;
                units.computeIfPresent(content.part(), (_, before) -> before * share);
            }
        }
    }

    private double priceOf(LabourTask task) {
        if (!task.hourlyRate().getCurrencyUnit().equals(currency)) {
            return 0;
        }
        return minor(task.hourlyRate())
                * task.minutes().doubleValue()
                / 60
                * factor(markUps.findPercent(MarkUp.LABOUR));
    }

    /** Parts and work of a share in all kits, without tax. */
    double of(KitShare share) {
        double sum = 0;
        for (Map.Entry<PartNumber, Double> need : share.needs().entrySet()) {
            sum += need.getValue() * units.getOrDefault(need.getKey(), 0.0);
        }
        for (Map.Entry<BenchWork, Integer> times : share.work().entrySet()) {
            sum += of(times.getKey(), times.getValue());
        }
        return sum * kits;
    }

    /** Work that is done so many times in a kit, for one kit. */
    private double of(BenchWork kind, int times) {
        return times * work.getOrDefault(kind, 0.0);
    }

    /**
     * What every design has beside its shares: blocks, caps, wedges and plugs, the test of each
     * circuit, the packing and the parcel.
     *
     * @param blocks no blocks for these devices cost the shop less, one pack at a time
     * @param locations where there are blocks
     */
    double beside(BigMoney blocks, int locations, int circuits) {
        PriceList prices = PriceList.of(book.catalog(), currency);
        double least = Double.POSITIVE_INFINITY;
        for (PartNumber part : most.keySet()) {
            Part known = book.catalog().findPart(part).orElseThrow();
            boolean ofBlocks =
                    known instanceof Block
                            || known instanceof Cap
                            || known instanceof Wedge
                            || known instanceof Plug;
            double listed = minor(prices.unitPriceOrZero(part));
            if (ofBlocks && listed > 0) {
                least = Math.min(least, units.getOrDefault(part, 0.0) / listed);
            }
        }
        double ofBlocks = Double.isInfinite(least) ? 0 : minor(blocks) * least;
        return kits
                        * (ofBlocks
                                + of(BenchWork.BLOCK, locations)
                                + of(BenchWork.TEST, circuits)
                                + of(BenchWork.PACK, 1))
                + shipping();
    }

    private double shipping() {
        return shipped
                ? book.shipping().stream()
                        .filter(row -> row.price().getCurrencyUnit().equals(currency))
                        .map(row -> minor(row.price()))
                        .min(Comparator.naturalOrder())
                        .orElse(0.0)
                : 0;
    }

    /** The least total in whole minor units, when lines come to so much: rounding and tax. */
    long total(double sum) {
        double net = Math.max(0, sum - HALF * lines);
        double due = net * tax.percent().doubleValue() / 100 - HALF;
        return (long) Math.floor(net + Math.max(0, due));
    }
}
