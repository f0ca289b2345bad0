package org.fusewright.core.order;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Things to buy, written by hand or drawn by chance. */
final class Tasks {

    private static final int[] PACKS = {1, 1, 1, 5, 10, 25, 100};

    private Tasks() {}

    /** An offer such as "NORTH A pack 10 1=0.42 50=0.38 in 5". */
    static Offer offer(String text) {
        String[] words = text.split(" ");
        List<PriceBreak> breaks =
                Stream.of(words)
                        .filter(word -> word.contains("="))
                        .map(word -> word.split("="))
                        .map(
                                pair ->
                                        new PriceBreak(
                                                Integer.parseInt(pair[0]),
                                                BigMoney.of(
                                                        CurrencyUnit.EUR, new BigDecimal(pair[1]))))
                        .toList();
        return new Offer(
                words[0],
                new PartNumber(words[1]),
                Integer.parseInt(words[3]),
                breaks,
                Integer.parseInt(words[words.length - 1]));
    }

    static CoverTask task(
            Map<String, Integer> needs, Map<String, String> minimums, String... offers) {
        Map<String, Money> least = new HashMap<>();
        minimums.forEach((supplier, value) -> least.put(supplier, Money.parse("EUR " + value)));
        return new CoverTask(
                CurrencyUnit.EUR,
                needs.entrySet().stream()
                        .map(need -> new Need(new PartNumber(need.getKey()), need.getValue()))
                        .toList(),
                Stream.of(offers).map(Tasks::offer).toList(),
                least,
                OptionalInt.empty());
    }

    /** Few parts with coarse prices, so that every way to buy them can be tried. */
    static CoverTask small(long seed) {
        Random random = new Random(seed);
        int suppliers = 1 + random.nextInt(3);
        List<Need> needs = new ArrayList<>();
        List<Offer> offers = new ArrayList<>();
        for (int p = 0; p < 1 + random.nextInt(3); p++) {
            PartNumber part = new PartNumber("P" + p);
            needs.add(new Need(part, 1 + random.nextInt(9)));
            for (int o = 0; o < 1 + random.nextInt(3); o++) {
                int pack = 1 + random.nextInt(4);
                List<PriceBreak> breaks = new ArrayList<>();
                int price = 3 + random.nextInt(15);
                breaks.add(new PriceBreak(1, tenthsOfCents(price * 10 + random.nextInt(10))));
                if (random.nextBoolean()) {
                    int from = 2 + random.nextInt(9);
                    int less = (int) Math.round(price * (6 + random.nextInt(6)) / 10.0);
                    breaks.add(new PriceBreak(from, tenthsOfCents(less * 10 + random.nextInt(10))));
                }
                offers.add(new Offer("S" + random.nextInt(suppliers), part, pack, breaks, 1));
            }
        }
        Map<String, Money> minimums = new HashMap<>();
        for (int s = 0; s < suppliers; s++) {
            if (random.nextInt(3) > 0) {
                minimums.put("S" + s, Money.ofMinor(CurrencyUnit.EUR, random.nextInt(61)));
            }
        }
        return new CoverTask(CurrencyUnit.EUR, needs, offers, minimums, OptionalInt.empty());
    }

    /**
     * A shop's order of so many parts, up to four offers each. The minimum orders together are
     * about {@code tightness} times what everything costs without them: from 1 on they bind all at
     * once.
     */
    static CoverTask hard(long seed, int parts, int suppliers, double tightness) {
        Random random = new Random(seed);
        List<Need> needs = new ArrayList<>();
        List<Offer> offers = new ArrayList<>();
        for (int p = 0; p < parts; p++) {
            PartNumber part = new PartNumber("P%03d".formatted(p));
            needs.add(new Need(part, 1 + random.nextInt(1 + random.nextInt(120))));
            double usual = Math.exp(random.nextDouble() * 5 - 2.5);
            List<Integer> who = new ArrayList<>(IntStream.range(0, suppliers).boxed().toList());
            Collections.shuffle(who, random);
            int count = 1 + random.nextInt(Math.min(4, suppliers));
            for (int o = 0; o < count; o++) {
                int pack = PACKS[random.nextInt(usual > 3 ? 4 : PACKS.length)];
                double price = usual * (0.8 + 0.4 * random.nextDouble());
                offers.add(new Offer("S" + who.get(o), part, pack, breaks(price, random), 1));
            }
        }
        CoverTask free =
                new CoverTask(CurrencyUnit.EUR, needs, offers, Map.of(), OptionalInt.empty());
        double each = CoverPlanner.plan(free).total().getAmountMinorLong() / (double) suppliers;
        Map<String, Money> minimums = new HashMap<>();
        for (int s = 0; s < suppliers; s++) {
            long least = Math.round(each * tightness * (0.5 + random.nextDouble()));
            minimums.put("S" + s, Money.ofMinor(CurrencyUnit.EUR, least));
        }
        return new CoverTask(CurrencyUnit.EUR, needs, offers, minimums, OptionalInt.empty());
    }

    private static List<PriceBreak> breaks(double first, Random random) {
        List<PriceBreak> breaks = new ArrayList<>();
        int count = 1 + random.nextInt(4);
        int from = 1;
        double price = first;
        for (int b = 0; b < count; b++) {
            BigDecimal amount = BigDecimal.valueOf(price).setScale(4, RoundingMode.HALF_UP);
            breaks.add(new PriceBreak(from, BigMoney.of(CurrencyUnit.EUR, amount)));
            from *= 2 + random.nextInt(9);
            price *= 0.8 + 0.18 * random.nextDouble();
        }
        return breaks;
    }

    private static BigMoney tenthsOfCents(int price) {
        return BigMoney.of(CurrencyUnit.EUR, BigDecimal.valueOf(price, 3));
    }
}
