package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.order.Cover.CoverLine;
import org.fusewright.core.order.Cover.LeftAside;
import org.fusewright.core.order.Cover.SupplierShare;
import org.fusewright.core.order.Cover.Uncovered;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Buys what is needed at least cost. Each part may come from several offers and in more than is
 * needed, always in whole packs; the price break that a line reaches holds for the whole line; a
 * line's price is rounded half up. An order at a supplier is worth at least its minimum, if need be
 * by buying more of the needed parts there, or is not made.
 */
public final class CoverPlanner {

    private static final Comparator<CoverLine> LINE_ORDER =
            Comparator.comparing((CoverLine line) -> line.offer().part())
                    .thenComparing(line -> line.offer().supplier())
                    .thenComparing(line -> line.offer().packSize());

    private final CoverTask task;
    private final Map<PartNumber, List<Offer>> offers = new HashMap<>();
    private final List<LeftAside> leftAside = new ArrayList<>();
    private final List<Uncovered> uncovered = new ArrayList<>();

    private CoverPlanner(CoverTask task) {
        this.task = task;
    }

    /** The same task gives the same cover. */
    public static Cover plan(CoverTask task) {
        return new CoverPlanner(task).plan();
    }

    private Cover plan() {
        sortOutOffers();
        List<Need> coverable = new ArrayList<>();
        for (Need need : task.needs()) {
            if (offers.containsKey(need.part())) {
                coverable.add(need);
            } else {
                uncovered.add(new Uncovered(need.part(), need.quantity(), whyNot(need.part())));
            }
        }
        Market market = marketFor(coverable);
        Optional<SupplierSearch.Found> found = SupplierSearch.search(market);
        if (found.isEmpty()) {
            for (Need need : coverable) {
                uncovered.add(
                        new Uncovered(
                                need.part(),
                                need.quantity(),
                                Phrase.of("cover.minimum-not-reached")));
            }
            return cover(marketFor(List.of()), new SupplierSearch.Found(new int[0][], 0, 0));
        }
        return cover(market, found.get());
    }

    private void sortOutOffers() {
        Set<PartNumber> needed = new HashSet<>();
        task.needs().forEach(need -> needed.add(need.part()));
        for (Offer offer : task.offers()) {
            if (!needed.contains(offer.part())) {
                continue;
            }
            if (!offer.currency().equals(task.currency())) {
                leftAside.add(
                        new LeftAside(offer, Phrase.of("cover.in", offer.currency().getCode())));
            } else if (isTooSlow(offer)) {
                leftAside.add(
                        new LeftAside(
                                offer, Phrase.of("cover.too-slow", days(offer.leadTimeDays()))));
            } else {
                offers.computeIfAbsent(offer.part(), _ -> new ArrayList<>()).add(offer);
            }
        }
    }

    private boolean isTooSlow(Offer offer) {
        return task.daysLeft().isPresent() && offer.leadTimeDays() > task.daysLeft().getAsInt();
    }

    private Text whyNot(PartNumber part) {
        List<Offer> all = task.offers().stream().filter(o -> o.part().equals(part)).toList();
        List<Offer> inCurrency =
                all.stream().filter(o -> o.currency().equals(task.currency())).toList();
        if (all.isEmpty()) {
            return Phrase.of("cover.nobody");
        }
        if (inCurrency.isEmpty()) {
            return Phrase.of("cover.nobody-in", task.currency().getCode());
        }
        int quickest = inCurrency.stream().mapToInt(Offer::leadTimeDays).min().orElseThrow();
        return Phrase.counted("cover.quickest", task.daysLeft().orElseThrow(), days(quickest));
    }

    private static Text days(int count) {
        return Phrase.counted("cover.days", count);
    }

    private Market marketFor(List<Need> needs) {
        Map<String, Integer> suppliers = new TreeMap<>();
        for (Need need : needs) {
            offers.get(need.part()).forEach(offer -> suppliers.put(offer.supplier(), 0));
        }
        List<String> codes = List.copyOf(suppliers.keySet());
        for (int s = 0; s < codes.size(); s++) {
            suppliers.put(codes.get(s), s);
        }
        List<PartSupply> parts = new ArrayList<>();
        for (Need need : needs) {
            List<OfferCosts> costs =
                    offers.get(need.part()).stream()
                            .map(o -> new OfferCosts(o, suppliers.get(o.supplier())))
                            .toList();
            parts.add(new PartSupply(need.quantity(), costs));
        }
        long[] minimums =
                codes.stream()
                        .mapToLong(
                                code ->
                                        Optional.ofNullable(task.minimums().get(code))
                                                .map(Money::getAmountMinorLong)
                                                .orElse(0L))
                        .toArray();
        return new Market(parts, codes, minimums);
    }

    private Cover cover(Market market, SupplierSearch.Found found) {
        List<CoverLine> lines = new ArrayList<>();
        Map<String, Integer> count = new TreeMap<>();
        for (int p = 0; p < found.quantities().length; p++) {
            PartSupply part = market.parts().get(p);
            for (int i = 0; i < part.offers().size(); i++) {
                int quantity = found.quantities()[p][i];
                if (quantity > 0) {
                    OfferCosts costs = part.offers().get(i);
                    lines.add(
                            new CoverLine(costs.offer(), quantity, money(costs.costAt(quantity))));
                    count.merge(costs.offer().supplier(), 1, Integer::sum);
                }
            }
        }
        lines.sort(LINE_ORDER);
        long[] values = market.valuesOf(found.quantities());
        List<SupplierShare> shares = new ArrayList<>();
        for (int s = 0; s < values.length; s++) {
            String code = market.suppliers().get(s);
            if (count.containsKey(code)) {
                shares.add(
                        new SupplierShare(
                                code,
                                count.get(code),
                                money(values[s]),
                                Optional.ofNullable(task.minimums().get(code))));
            }
        }
        Optional<Money> naive =
                lines.isEmpty() ? Optional.empty() : NaiveOrder.cost(market).map(this::money);
        return new Cover(
                lines,
                shares,
                money(found.cost()),
                money(found.bound()),
                naive,
                uncovered,
                leftAside);
    }

    private Money money(long minor) {
        CurrencyUnit currency = task.currency();
        return Money.ofMinor(currency, minor);
    }
}
