package org.fusewright.core.pricing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

class BagsTest {

    private static final PartNumber A = new PartNumber("A");
    private static final PartNumber B = new PartNumber("B");
    private static final PartNumber BAG = new PartNumber("BAG");

    /** A costs 1.00, B 0.30 and a bag of 4 A and 6 B 3.50; loose they cost 5.80. */
    @ParameterizedTest(name = "{0} A and {1} B: {2} bags, {3} A and {4} B loose")
    @CsvSource({
        "0, 0, 0, 0, 0",
        "3, 1, 0, 3, 1",
        "3, 2, 1, 0, 0",
        "4, 0, 1, 0, 0",
        "2, 4, 0, 2, 4",
        "4, 6, 1, 0, 0",
        "5, 8, 1, 1, 2",
        "8, 12, 2, 0, 0",
        "9, 12, 2, 1, 0",
    })
    void takesBagsWhereTheyCostLess(int needA, int needB, int bags, int looseA, int looseB) {
        Stock stock =
                stock(
                        List.of(plug("A"), plug("B"), bag("BAG", Map.of(A, 4, B, 6))),
                        Map.of(A, "1.00", B, "0.30", BAG, "3.50"));
        int[] need = {needA, needB};

        int[] counts = stock.bags().cheapest(need);

        assertThat(stock.bags().parts()).containsExactly(A, B);
        assertThat(counts).containsExactly(bags);
        assertThat(loose(need, counts, stock.bags())).containsExactly(looseA, looseB);
    }

    @Test
    void costsNoMoreThanAnyOtherWayOnRandomNeeds() {
        for (long seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            Map<PartNumber, String> prices = new HashMap<>();
            List<Part> parts = new ArrayList<>();
            List<PartNumber> pieces = new ArrayList<>();
            for (int p = 0; p < 1 + random.nextInt(4); p++) {
                PartNumber number = new PartNumber("P" + p);
                pieces.add(number);
                parts.add(plug(number.value()));
                prices.put(number, BigDecimal.valueOf(1 + random.nextInt(300), 2).toString());
            }
            List<BaggedSet> bags = new ArrayList<>();
            for (int s = 0; s < random.nextInt(4); s++) {
                Map<PartNumber, Integer> contents = new HashMap<>();
                pieces.stream()
                        .filter(piece -> contents.isEmpty() || random.nextBoolean())
                        .forEach(piece -> contents.put(piece, 1 + random.nextInt(5)));
                BaggedSet bag = bag("S" + s, contents);
                bags.add(bag);
                prices.put(
                        bag.number(), BigDecimal.valueOf(1 + random.nextInt(1500), 2).toString());
            }
            parts.addAll(bags);
            Map<PartNumber, Integer> need = new HashMap<>();
            pieces.forEach(piece -> need.put(piece, 1 + random.nextInt(9)));
            Stock stock = stock(parts, prices);

            Bags set = stock.bags();
            int[] baggable = set.parts().stream().mapToInt(need::get).toArray();
            int[] counts = set.cheapest(baggable);

            BigDecimal cost = BigDecimal.ZERO;
            for (int bag = 0; bag < counts.length; bag++) {
                cost = cost.add(price(prices, set.sets().get(bag).number(), counts[bag]));
            }
            int[] loose = loose(baggable, counts, set);
            for (PartNumber piece : pieces) {
                int place = set.placeOf(piece);
                cost = cost.add(price(prices, piece, place < 0 ? need.get(piece) : loose[place]));
            }
            assertThat(cost).as("seed " + seed).isEqualByComparingTo(least(need, bags, 0, prices));
        }
    }

    private static int[] loose(int[] need, int[] counts, Bags bags) {
        int[] loose = need.clone();
        for (int part = 0; part < loose.length; part++) {
            for (int set = 0; set < counts.length; set++) {
                loose[part] = Math.max(0, loose[part] - counts[set] * bags.content(set, part));
            }
        }
        return loose;
    }

    /** Tries every number of every bag up to ten, which no need here exceeds. */
    private static BigDecimal least(
            Map<PartNumber, Integer> open,
            List<BaggedSet> bags,
            int next,
            Map<PartNumber, String> prices) {
        if (next == bags.size()) {
            return open.entrySet().stream()
                    .map(piece -> price(prices, piece.getKey(), Math.max(0, piece.getValue())))
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
        }
        BigDecimal best = null;
        BaggedSet bag = bags.get(next);
        for (int count = 0; count <= 10; count++) {
            Map<PartNumber, Integer> left = new HashMap<>(open);
            for (BaggedSet.Content content : bag.contains()) {
                left.merge(content.part(), -count * content.quantity(), Integer::sum);
            }
            BigDecimal cost =
                    price(prices, bag.number(), count).add(least(left, bags, next + 1, prices));
            best = best == null ? cost : best.min(cost);
        }
        return best;
    }

    private static BigDecimal price(Map<PartNumber, String> prices, PartNumber part, int count) {
        return new BigDecimal(prices.get(part)).multiply(BigDecimal.valueOf(count));
    }

    private static Part plug(String number) {
        return new Plug(new Item(new PartNumber(number), "Piece " + number, "", 1), "any");
    }

    private static BaggedSet bag(String number, Map<PartNumber, Integer> contents) {
        return new BaggedSet(
                new Item(new PartNumber(number), "Bag " + number, "", 1),
                contents.entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(entry -> new BaggedSet.Content(entry.getKey(), entry.getValue()))
                        .toList());
    }

    private static Stock stock(List<? extends Part> parts, Map<PartNumber, String> prices) {
        List<Offer> offers =
                prices.entrySet().stream()
                        .map(
                                entry ->
                                        new Offer(
                                                "S",
                                                entry.getKey(),
                                                1,
                                                List.of(
                                                        new Offer.PriceBreak(
                                                                1,
                                                                BigMoney.of(
                                                                        CurrencyUnit.EUR,
                                                                        new BigDecimal(
                                                                                entry
                                                                                        .getValue())))),
                                                1))
                        .toList();
        return Stock.of(Catalog.of("test", parts, offers), CurrencyUnit.EUR);
    }
}
