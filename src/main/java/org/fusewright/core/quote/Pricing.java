package org.fusewright.core.quote;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a number of equal kits costs a customer: parts at cost for that quantity plus mark-up, bench
 * work as counted from the kit, shipping in one parcel, and tax on the sum. Each line is rounded
 * half up once, to the currency's minor unit ({@link PriceList#extend}); the tax is one such line.
 */
final class Pricing {
    private static final String EACH = "each";
    private static final String METRES = "m";
    private static final String SPARE = Phrase.of("quote.detail.spare").english();
    private static final int MINUTES_IN_AN_HOUR = 60;

    private final PriceBook book;
    private final MarkUps markUps;
    private final PurchaseCost costs;
    private final CurrencyUnit currency;
    private final BigDecimal kits;
    private final TaxKind tax;
    private final boolean shipped;

    Pricing(PriceBook book, CurrencyUnit currency, int kits, TaxKind tax, boolean shipped) {
        this.book = book;
        this.markUps = new MarkUps(book.markUps());
        this.costs = new PurchaseCost(book.catalog(), currency);
        this.currency = currency;
        this.kits = BigDecimal.valueOf(kits);
        this.tax = tax;
        this.shipped = shipped;
    }

    Money totalOf(Kit kit) {
        return price(VariantKind.CHEAPEST, kit).total();
    }

    /**
     * @param most of each part that one kit of any design holds, but for blocks and what closes
     *     them
     * @param items how many devices and relays sit in blocks, and spare positions
     */
    PriceFloor floor(Map<PartNumber, Double> most, int items) {
        return new PriceFloor(
                book, markUps, costs, currency, kits.intValueExact(), tax, shipped, most, items);
    }

    Variant price(VariantKind kind, Kit kit) {
        return price(kind, kit, List.of());
    }

    /**
     * @param notes what is to be told beside gaps
     */
    Variant price(VariantKind kind, Kit kit, List<String> notes) {
        Set<String> gaps = new LinkedHashSet<>(notes);
        List<QuoteLine> lines = new ArrayList<>();
        addParts(lines, kit, gaps);
        addLabour(lines, kit, gaps);
        long massG = (long) Math.ceil(kit.totals().massG() * kits.intValueExact());
        if (shipped) {
            addShipping(lines, massG, gaps);
        }
        Money net = sum(lines.stream().map(QuoteLine::price).toList());
        Money due = PriceList.extend(net.toBigMoney(), tax.percent(), Percent.HUNDRED);
        return new Variant(
                kind,
                kit.fingerprint(),
                count(kit, Verdict.PASS),
                count(kit, Verdict.CAUTION),
                count(kit, Verdict.FAIL),
                listWarnings(kit),
                kit.circuits().stream().flatMap(c -> protection(c).stream()).toList(),
                kit.blocks().size(),
                massG,
                lines,
                List.copyOf(gaps),
                net,
                due,
                net.plus(due),
                sum(lines.stream().map(QuoteLine::cost).toList()));
    }

    private void addParts(List<QuoteLine> lines, Kit kit, Set<String> gaps) {
        Map<PartNumber, BigDecimal> needed = new TreeMap<>();
        for (PartLine part : kit.parts()) {
            needed.merge(part.part().number(), part.quantity().multiply(kits), BigDecimal::add);
        }
        for (PartLine part : kit.parts()) {
            PartNumber number = part.part().number();
            String group = part.group().code();
            Optional<PurchaseCost.Unit> unit = costs.findUnit(number, needed.get(number));
            if (unit.isEmpty()) {
                gaps.add(gap("quote.gap.no-offer", number, currency.getCode()));
            }
            lines.add(
                    QuoteLine.of(
                            LineKind.PART,
                            group,
                            number.value(),
                            part.part().title(),
                            part.group() == PartGroup.SPARE ? SPARE : "",
                            part.quantity().multiply(kits),
                            part.part() instanceof Wire ? METRES : EACH,
                            unit.map(PurchaseCost.Unit::price).orElse(BigMoney.zero(currency)),
                            unit.map(PurchaseCost.Unit::supplier).orElse(""),
                            orNothing(markUps.findPercent(number, group), group, gaps),
                            1));
        }
    }

    private void addLabour(List<QuoteLine> lines, Kit kit, Set<String> gaps) {
        Map<BenchWork, LabourTask> tasks = new EnumMap<>(BenchWork.class);
        for (LabourTask task : book.labour()) {
            BenchWork.parse(task.code())
                    .ifPresentOrElse(
                            work -> tasks.put(work, task),
                            () -> gaps.add(gap("quote.gap.unknown-labour", task.code())));
        }
        for (BenchWork work : BenchWork.values()) {
            int times = work.countIn(kit) * kits.intValueExact();
            if (times > 0) {
                findLabour(work, tasks, gaps).ifPresent(t -> lines.add(labour(t, times, gaps)));
            }
        }
    }

    /** The task with a rate in the quote's currency. */
    private Optional<LabourTask> findLabour(
            BenchWork work, Map<BenchWork, LabourTask> tasks, Set<String> gaps) {
        Optional<LabourTask> task = Optional.ofNullable(tasks.get(work));
        if (task.isEmpty()) {
            gaps.add(gap("quote.gap.no-time", work.code()));
        }
        Optional<LabourTask> inCurrency =
                task.filter(known -> known.hourlyRate().getCurrencyUnit().equals(currency));
        if (task.isPresent() && inCurrency.isEmpty()) {
            gaps.add(gap("quote.gap.no-rate", work.code(), currency.getCode()));
        }
        return inCurrency;
    }

    private QuoteLine labour(LabourTask task, int times, Set<String> gaps) {
        return QuoteLine.of(
                LineKind.LABOUR,
                MarkUp.LABOUR,
                task.code(),
                task.title(),
                Phrase.of("quote.detail.labour", times, task.minutes()).english(),
                task.minutes().multiply(BigDecimal.valueOf(times)),
                "min",
                task.hourlyRate(),
                "",
                orNothing(markUps.findPercent(MarkUp.LABOUR), MarkUp.LABOUR, gaps),
                MINUTES_IN_AN_HOUR);
    }

    private void addShipping(List<QuoteLine> lines, long massG, Set<String> gaps) {
        Optional<ShippingClass> lightest =
                book.shipping().stream()
                        .filter(row -> row.price().getCurrencyUnit().equals(currency))
                        .filter(row -> row.upToG() >= massG)
                        .min(Comparator.comparingInt(ShippingClass::upToG));
        if (lightest.isEmpty()) {
            gaps.add(gap("quote.gap.no-shipping", currency.getCode(), grams(massG)));
            return;
        }
        ShippingClass shipping = lightest.get();
        lines.add(
                QuoteLine.of(
                        LineKind.SHIPPING,
                        LineKind.SHIPPING.code(),
                        shipping.code(),
                        shipping.title(),
                        Phrase.of("quote.detail.parcel", grams(massG), grams(shipping.upToG()))
                                .english(),
                        BigDecimal.ONE,
                        "parcel",
                        shipping.price(),
                        "",
                        BigDecimal.ZERO,
                        1));
    }

    /** Kept with the quote, whose document speaks English. */
    private static String gap(String key, Object... values) {
        return Phrase.of(key, values).english();
    }

    private static Amount grams(long massG) {
        return new Amount(massG, Unit.GRAM, 0);
    }

    private static BigDecimal orNothing(
            Optional<BigDecimal> percent, String group, Set<String> gaps) {
        if (percent.isEmpty()) {
            gaps.add(gap("quote.gap.no-mark-up", group));
        }
        return percent.orElse(BigDecimal.ZERO);
    }

    private Money sum(Collection<Money> amounts) {
        Money sum = Money.zero(currency);
        for (Money amount : amounts) {
            sum = sum.plus(amount);
        }
        return sum;
    }

    private static int count(Kit kit, Verdict verdict) {
        return (int) kit.checks().stream().filter(c -> c.verdict() == verdict).count();
    }

    private static List<String> listWarnings(Kit kit) {
        return kit.checks().stream()
                .filter(check -> check.verdict() != Verdict.PASS)
                .sorted(Comparator.comparing(Check::verdict).reversed())
                .map(
                        check ->
                                Phrase.of("quote.warning." + check.verdict().code(), check.says())
                                        .english())
                .toList();
    }

    private static Optional<Variant.Protection> protection(KitCircuit circuit) {
        return circuit.sized()
                .device()
                .map(
                        device ->
                                new Variant.Protection(
                                        circuit.sized().id(),
                                        circuit.sized().resolved().circuit().title(),
                                        Phrase.of(
                                                        "quote.device." + device.kind().code(),
                                                        Amount.rating(device.ratingA()))
                                                .english()));
    }
}
