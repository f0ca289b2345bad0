package org.fusewright.jobs;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.JobResolver;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.ArrangementOffer;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.sizing.WhatIf;
import org.springframework.stereotype.Service;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;

/**
 * Plans kits from the catalog in force. Whoever may not see prices gets kits without any: here, and
 * nowhere else.
 */
@Service
public class Kits {
    private record Planning(Catalog catalog, KitPlanner planner) {}

    private final Catalogs catalogs;
    private final PriceSight sight;
    private final AtomicReference<Optional<Planning>> latest =
            new AtomicReference<>(Optional.empty());

    Kits(Catalogs catalogs, PriceSight sight) {
        this.catalogs = catalogs;
        this.sight = sight;
    }

    /**
     * Plans the kit of a job as read.
     *
     * @throws NoCatalogException before the first import
     * @throws MalformedJobException with all that is wrong in the document itself and against the
     *     catalog
     */
    public Kit plan(JobReading reading) {
        Kit kit = planningFor(reading).planner().plan(reading.job());
        return sight.isOpen() ? kit : kit.withoutPrices();
    }

    /**
     * The arrangements of a job's blocks to pick from.
     *
     * @throws NoCatalogException before the first import
     * @throws MalformedJobException as {@link #plan}
     */
    public List<ArrangementOffer> listArrangements(JobReading reading) {
        List<ArrangementOffer> offers =
                planningFor(reading).planner().listArrangements(reading.job());
        return sight.isOpen()
                ? offers
                : offers.stream().map(ArrangementOffer::withoutPrice).toList();
    }

    /**
     * What becomes of one circuit of a job as read when something differs.
     *
     * @param circuit of the job
     * @throws NoCatalogException before the first import
     * @throws MalformedJobException as {@link #plan}
     */
    public WhatIf whatIf(JobReading reading, String circuit) {
        return planningFor(reading).planner().whatIf(reading.job(), circuit);
    }

    /** The first family of wire in the catalog whose sizes are of a standard. */
    public Optional<String> findWireFamily(WireSize.Standard standard) {
        return catalogs.findContent().map(CatalogContent::catalog).stream()
                .flatMap(catalog -> catalog.listParts(Wire.class).stream())
                .filter(wire -> wire.size().standard() == standard)
                .map(Wire::family)
                .findFirst();
    }

    private Planning planningFor(JobReading reading) {
        Planning planning = planning();
        if (!reading.isSound()) {
            throw new MalformedJobException(
                    reading.problemsWith(stockProblems(reading.job(), planning.catalog())));
        }
        return planning;
    }

    /** A planner is costly to make, so one serves until the catalog changes. */
    private Planning planning() {
        Catalog catalog =
                catalogs.findContent()
                        .map(CatalogContent::catalog)
                        .orElseThrow(NoCatalogException::new);
        Optional<Planning> known = latest.get().filter(planning -> planning.catalog() == catalog);
        if (known.isPresent()) {
            return known.get();
        }
        Planning made = new Planning(catalog, KitPlanner.of(catalog));
        latest.set(Optional.of(made));
        return made;
    }

    /** What a job that is wrong already asks for and the catalog does not stock. */
    private static List<JobProblem> stockProblems(Job job, Catalog catalog) {
        if (job.feeds().isEmpty() || !PriceList.listCurrencies(catalog).contains(job.currency())) {
            return List.of();
        }
        try {
            JobResolver.resolve(withKnownFeeds(job), Stock.of(catalog, job.currency()));
            return List.of();
        } catch (MalformedJobException e) {
            return e.problems();
        }
    }

    /** Circuits on feeds that do not exist are moved to the first: the resolver takes no others. */
    private static Job withKnownFeeds(Job job) {
        Set<String> known = job.feeds().stream().map(Feed::id).collect(Collectors.toSet());
        List<Circuit> circuits =
                job.circuits().stream()
                        .map(
                                circuit ->
                                        known.contains(circuit.feed())
                                                ? circuit
                                                : circuit.withFeed(job.feeds().getFirst().id()))
                        .toList();
        return job.withCircuits(circuits);
    }
}
