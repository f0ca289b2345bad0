package org.fusewright.core.kit;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Bags;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.words.Phrase;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Counts what the drawing shows and makes the lines of the parts list. Bagged sets take their part
 * of the need first, where they cost less; loose pieces take the rest.
 */
final class PartsList {

    private static final Comparator<PartLine> BY_NUMBER =
            Comparator.comparing(line -> line.part().number());

    private final Stock stock;
    private final Map<PartNumber, Need> needs = new HashMap<>();
    private final Map<PartGroup, List<PartLine>> lines = new EnumMap<>(PartGroup.class);

    /** Where a part is needed; the first places are taken first. */
    private static final class Need {
        private final Part part;
        private final List<String> places = new ArrayList<>();
        private int taken;

        Need(Part part) {
            this.part = part;
        }

        int open() {
            return places.size() - taken;
        }

        /** The first places that are still open, at most so many. */
        List<String> take(int most) {
            int from = taken;
            taken += Math.min(most, open());
            return List.copyOf(places.subList(from, taken));
        }
    }

    private PartsList(Stock stock) {
        this.stock = stock;
    }

    static List<PartLine> of(
            List<KitBlock> blocks,
            List<KitCircuit> circuits,
            List<KitFeed> feeds,
            List<WireLine> wire,
            ResolvedJob job) {
        PartsList list = new PartsList(job.stock());
        blocks.forEach(list::need);
        circuits.forEach(list::need);
        feeds.forEach(list::need);
        list.addBagsAndPieces();
        wire.forEach(list::add);
        Spares.of(blocks, feeds, job).forEach(list::add);
        List<PartLine> inOrder = new ArrayList<>();
        for (List<PartLine> ofGroup : list.lines.values()) {
            ofGroup.sort(BY_NUMBER);
            inOrder.addAll(ofGroup);
        }
        return inOrder;
    }

    static Kit.Totals total(List<PartLine> lines, CurrencyUnit currency) {
        Money price = Money.zero(currency);
        double massG = 0;
        for (PartLine line : lines) {
            price = price.plus(line.extended());
            massG += line.massG();
        }
        return new Kit.Totals(price, massG);
    }

    private void need(KitBlock block) {
        need(block.block(), block.id());
        need(block.cap(), block.id());
        block.wedge().ifPresent(wedge -> need(wedge, block.id()));
        for (Cavity cavity : block.cavities()) {
            cavity.occupant()
                    .ifPresent(
                            occupant -> {
                                occupant.terminal().ifPresent(t -> need(t, cavity.id()));
                                occupant.seal().ifPresent(s -> need(s, cavity.id()));
                            });
            cavity.plug().ifPresent(plug -> need(plug, cavity.id()));
        }
        block.seats().forEach(seat -> need(seat.part(), place(block, seat)));
    }

    /** A seat in the words of the drawing: "B1-2", or "B1-3/4" for a relay. */
    static String place(KitBlock block, KitBlock.Seat seat) {
        StringBuilder place = new StringBuilder(block.id());
        char separator = '-';
        for (int position : seat.positions()) {
            place.append(separator).append(position);
            separator = '/';
        }
        return place.toString();
    }

    private void need(KitCircuit circuit) {
        circuit.sized().splices().forEach(splice -> need(splice.part(), splice.id()));
    }

    /** Where a main device and its holder belong: "feed battery". */
    static String placeOf(KitFeed feed) {
        return Phrase.of("place.feed", feed.sized().id()).english();
    }

    private void need(KitFeed feed) {
        String place = placeOf(feed);
        feed.sized().mainDevice().ifPresent(device -> need(device, place));
        feed.sized().holder().ifPresent(holder -> need(holder, place));
        feed.sized().splices().forEach(splice -> need(splice.part(), splice.id()));
    }

    private void need(Part part, String place) {
        Need need = needs.get(part.number());
        if (need == null) {
            need = new Need(part);
            needs.put(part.number(), need);
        }
        need.places.add(place);
    }

    private void addBagsAndPieces() {
        Bags bags = stock.bags();
        int[] baggable = new int[bags.parts().size()];
        for (int p = 0; p < baggable.length; p++) {
            Need need = needs.get(bags.parts().get(p));
            baggable[p] = need == null ? 0 : need.open();
        }
        int[] counts = bags.cheapest(baggable);
        for (int s = 0; s < counts.length; s++) {
            if (counts[s] > 0) {
                addBags(bags.sets().get(s), counts[s]);
            }
        }
        for (Need need : needs.values()) {
            int open = need.open();
            if (open > 0) {
                add(need.part, PartGroup.of(need.part), BigDecimal.valueOf(open), need.take(open));
            }
        }
    }

    private void addBags(BaggedSet set, int quantity) {
        Set<String> usedAt = new LinkedHashSet<>();
        List<BaggedSet.Content> surplus = new ArrayList<>();
        for (BaggedSet.Content content : set.contains()) {
            int brought = content.quantity() * quantity;
            List<String> taken = takePlaces(content.part(), brought);
            usedAt.addAll(taken);
            if (taken.size() < brought) {
                surplus.add(new BaggedSet.Content(content.part(), brought - taken.size()));
            }
        }
        BigDecimal bags = BigDecimal.valueOf(quantity);
        add(set, PartGroup.SET, bags, List.copyOf(usedAt), set.contains(), surplus);
    }

    private List<String> takePlaces(PartNumber part, int most) {
        Need need = needs.get(part);
        return need == null ? List.of() : need.take(most);
    }

    private void add(WireLine wire) {
        List<String> leads = new ArrayList<>(wire.leads().size());
        for (KitLead lead : wire.leads()) {
            leads.add(lead.lead().id());
        }
        BigDecimal metres = BigDecimal.valueOf(wire.total().value(), 3);
        add(wire.wire(), PartGroup.WIRE, metres, leads);
    }

    private void add(Spares.Spare spare) {
        BigDecimal pieces = BigDecimal.valueOf(spare.quantity());
        add(spare.device(), PartGroup.SPARE, pieces, spare.standsInAt());
    }

    private void add(Part part, PartGroup group, BigDecimal quantity, List<String> usedAt) {
        add(part, group, quantity, usedAt, List.of(), List.of());
    }

    private void add(
            Part part,
            PartGroup group,
            BigDecimal quantity,
            List<String> usedAt,
            List<BaggedSet.Content> contains,
            List<BaggedSet.Content> surplus) {
        BigMoney unitPrice = stock.prices().unitPriceOrZero(part.number());
        PartLine line =
                new PartLine(
                        part,
                        group,
                        quantity,
                        usedAt,
                        unitPrice,
                        PriceList.extend(unitPrice, quantity),
                        quantity.doubleValue() * part.massG(),
                        contains,
                        surplus);
        lines.computeIfAbsent(group, none -> new ArrayList<>()).add(line);
    }
}
