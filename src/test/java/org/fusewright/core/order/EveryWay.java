package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.pricing.PriceList;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;

/**
 * The cheapest cover by trying every way: all quantities of all offers of a part, and all
 * combinations of what the parts then cost at each supplier.
 */
final class EveryWay {

    /** More pieces of one offer cover no small task better, and reach no more of a minimum. */
    static final int MOST = 28;

    private final CoverTask task;
    private final List<String> suppliers;
    private final long[] minimums;

    private EveryWay(CoverTask task) {
        this.task = task;
        this.suppliers = task.offers().stream().map(Offer::supplier).distinct().toList();
        this.minimums =
                suppliers.stream()
                        .map(supplier -> Optional.ofNullable(task.minimums().get(supplier)))
                        .mapToLong(least -> least.map(Money::getAmountMinorLong).orElse(0L))
                        .toArray();
    }

    /** In minor units; empty when there is no cover. */
    static OptionalLong cheapest(CoverTask task) {
        return new EveryWay(task).cheapest();
    }

    private OptionalLong cheapest() {
        Map<List<Long>, Long> sums = Map.of(suppliers.stream().map(_ -> 0L).toList(), 0L);
        for (Need need : task.needs()) {
            Map<List<Long>, Long> ways = new HashMap<>();
            List<Offer> offers =
                    task.offers().stream().filter(o -> o.part().equals(need.part())).toList();
            buy(offers, need.quantity(), new long[suppliers.size()], ways);
            Map<List<Long>, Long> next = new HashMap<>();
            sums.forEach(
                    (sum, cost) ->
                            ways.forEach(
                                    (way, more) ->
                                            next.merge(plus(sum, way), cost + more, Math::min)));
            sums = next;
        }
        return sums.entrySet().stream()
                .filter(sum -> isEnough(sum.getKey()))
                .mapToLong(Map.Entry::getValue)
                .min();
    }

    private boolean isEnough(List<Long> reached) {
        for (int s = 0; s < minimums.length; s++) {
            if (reached.get(s) > 0 && reached.get(s) < minimums[s]) {
                return false;
            }
        }
        return true;
    }

    /** What an order is worth beyond its minimum tells nothing more. */
    private List<Long> plus(List<Long> a, List<Long> b) {
        List<Long> sum = new ArrayList<>();
        for (int s = 0; s < minimums.length; s++) {
            sum.add(Math.min(minimums[s], a.get(s) + b.get(s)));
        }
        return sum;
    }

    private void buy(List<Offer> offers, int open, long[] spent, Map<List<Long>, Long> ways) {
        if (offers.isEmpty()) {
            if (open <= 0) {
                List<Long> none = suppliers.stream().map(_ -> 0L).toList();
                List<Long> reached = plus(none, LongStream.of(spent).boxed().toList());
                ways.merge(reached, LongStream.of(spent).sum(), Math::min);
            }
            return;
        }
        Offer offer = offers.getFirst();
        int supplier = suppliers.indexOf(offer.supplier());
        long[] more = spent.clone();
        for (int quantity = 0; quantity <= MOST; quantity += offer.packSize()) {
            more[supplier] = spent[supplier] + cost(offer, quantity);
            buy(offers.subList(1, offers.size()), open - quantity, more, ways);
        }
    }

    private static long cost(Offer offer, int quantity) {
        return quantity == 0
                ? 0
                : PriceList.extend(offer.unitPriceAt(quantity), BigDecimal.valueOf(quantity))
                        .getAmountMinorLong();
    }
}
