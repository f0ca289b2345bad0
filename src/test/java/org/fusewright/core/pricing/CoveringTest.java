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
import java.util.SortedMap;
import java.util.TreeMap;

class CoveringTest {

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
        SortedMap<PartNumber, Integer> need = new TreeMap<>();
        if (needA > 0) {
            need.put(A, needA);
        }
        if (needB > 0) {
            need.put(B, needB);
        }

        Covering.Cover cover = Covering.cover(need, stock);

        assertThat(cover.bags().getOrDefault(BAG, 0)).isEqualTo(bags);
        assertThat(cover.loose().getOrDefault(A, 0)).isEqualTo(looseA);
        assertThat(cover.loose().getOrDefault(B, 0)).isEqualTo(looseB);
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
            SortedMap<PartNumber, Integer> need = new TreeMap<>();
            pieces.forEach(piece -> need.put(piece, 1 + random.nextInt(9)));
            Stock stock = stock(parts, prices);

            Covering.Cover cover = Covering.cover(need, stock);

            BigDecimal cost = BigDecimal.ZERO;
            for (Map.Entry<PartNumber, Integer> bag : cover.bags().entrySet()) {
                cost = cost.add(price(prices, bag.getKey(), bag.getValue()));
            }
            for (Map.Entry<PartNumber, Integer> piece : cover.loose().entrySet()) {
                cost = cost.add(price(prices, piece.getKey(), piece.getValue()));
            }
            assertThat(cost).as("seed " + seed).isEqualByComparingTo(least(need, bags, 0, prices));
        }
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
