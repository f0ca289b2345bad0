package org.fusewright.core.kit;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.fitting.KnownDiscounts;
import org.fusewright.core.fitting.KnownReasons;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.JobResolver;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.kit.Arranging.Pick;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.PlacedStocks;
import org.fusewright.core.sizing.SizedJob;
import org.fusewright.core.sizing.Sizer;
import org.fusewright.core.sizing.WhatIf;
import org.joda.money.CurrencyUnit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * From a job to its kit: the whole street on one page. Each step reads what the steps before it
 * found and changes none of it. Made once for a catalog and then shared; the same job always gives
 * the same kit.
 */
public final class KitPlanner {

    private final Catalog catalog;
    private final Map<CurrencyUnit, Stocked> stocks;
    private final KnownReasons reasons = new KnownReasons();
    private final KnownDiscounts discounts = new KnownDiscounts();

    /** What can be bought in one currency. */
    private record Stocked(PlacedStocks placed, BuildableBlocks.Choice blocks) {

        static Stocked of(Stock stock) {
            return new Stocked(PlacedStocks.of(stock), BuildableBlocks.Choice.of(stock));
        }

        Stock stock() {
            return placed.stock();
        }

        FittingModel model(SizedJob sized, Choices choices) {
            return FittingModel.of(sized, stock(), blocks.with(choices), choices.sparePositions());
        }
    }

    private KitPlanner(Catalog catalog) {
        this.catalog = catalog;
        this.stocks =
                PriceList.listCurrencies(catalog).stream()
                        .collect(
                                Collectors.toUnmodifiableMap(
                                        currency -> currency,
                                        currency -> Stocked.of(Stock.of(catalog, currency))));
    }

    public static KitPlanner of(Catalog catalog) {
        return new KitPlanner(catalog);
    }

    /**
     * Plans the kit. A job that cannot be built still has one; its checks say so.
     *
     * @throws MalformedJobException when the job asks for what the catalog does not stock
     */
    public Kit plan(Job job) {
        Stocked stocked = stockIn(job.currency());
        ResolvedJob resolved = JobResolver.resolve(job, stocked.stock());
        SizedJob sized = Sizer.size(resolved, stocked.placed());
        FittingModel model = stocked.model(sized, job.choices());
        Arranging arranging = Arranging.of(model, sized, discounts);
        ArrangementKind asked = job.choices().arrangement();
        Pick pick = arranging.pick(asked);
        List<KitBlock> blocks = pick.arranged().blocks();
        LeadEnds ends = LeadEnds.of(blocks);
        List<KitCircuit> circuits = ends.circuits(sized.circuits());
        List<KitFeed> feeds = ends.feeds(sized.feeds());
        List<KitLead> leads = LeadEnds.listAll(circuits, feeds);
        List<WireLine> wire = WireLines.of(leads);
        List<PartLine> parts = PartsList.of(blocks, circuits, feeds, wire, resolved);
        List<Check> checks =
                byCode(
                        sized.checks(),
                        KitChecks.of(
                                blocks,
                                model,
                                pick.arranged().arrangement(),
                                leads,
                                parts,
                                resolved));
        return new Kit(
                job,
                catalog.version(),
                Fingerprint.of(job, catalog),
                circuits,
                feeds,
                blocks,
                KitFit.of(arranging, pick, asked, reasons),
                checks,
                parts,
                wire,
                PartsList.total(parts, job.currency()));
    }

    /**
     * The arrangements of the job's blocks to pick from, the cheapest first; none for a job without
     * anything to place.
     *
     * @throws MalformedJobException when the job asks for what the catalog does not stock
     */
    public List<ArrangementOffer> listArrangements(Job job) {
        Stocked stocked = stockIn(job.currency());
        SizedJob sized = Sizer.size(JobResolver.resolve(job, stocked.stock()), stocked.placed());
        FittingModel model = stocked.model(sized, job.choices());
        return ArrangementOffers.list(model, sized, job.choices(), discounts);
    }

    /**
     * What becomes of one circuit of the job when something differs.
     *
     * @throws MalformedJobException when the job asks for what the catalog does not stock
     */
    public WhatIf whatIf(Job job, String circuit) {
        return WhatIf.of(JobResolver.resolve(job, stockIn(job.currency()).stock()), circuit);
    }

    /** In the order of the codes; under one code, in the order in which they were made. */
    private static List<Check> byCode(List<Check> ofSizes, List<Check> ofBlocks) {
        Map<CheckCode, List<Check>> byCode = new EnumMap<>(CheckCode.class);
        for (List<Check> some : List.of(ofSizes, ofBlocks)) {
            for (Check check : some) {
                byCode.computeIfAbsent(check.code(), code -> new ArrayList<>()).add(check);
            }
        }
        List<Check> checks = new ArrayList<>(ofSizes.size() + ofBlocks.size());
        byCode.values().forEach(checks::addAll);
        return checks;
    }

    private Stocked stockIn(CurrencyUnit currency) {
        Stocked stock = stocks.get(currency);
        if (stock == null) {
            String offered =
                    stocks.keySet().stream()
                            .map(CurrencyUnit::getCode)
                            .sorted()
                            .collect(Collectors.joining(", "));
            throw new MalformedJobException(
                    List.of(
                            offered.isEmpty()
                                    ? JobProblem.of(
                                            "/currency", "wrong.no-offers", currency.getCode())
                                    : JobProblem.of(
                                            "/currency",
                                            "wrong.no-offers-in",
                                            currency.getCode(),
                                            offered)));
        }
        return stock;
    }
}
