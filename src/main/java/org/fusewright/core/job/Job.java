package org.fusewright.core.job;

import org.joda.money.CurrencyUnit;

import java.util.List;
import java.util.Optional;

/** One customer's machine as described, with every default filled in. */
public record Job(
        String reference,
        String title,
        String customer,
        CurrencyUnit currency,
        Supply supply,
        Surroundings surroundings,
        List<Feed> feeds,
        List<Circuit> circuits,
        List<Location> locations,
        Choices choices) {

    public Job {
        feeds = List.copyOf(feeds);
        circuits = List.copyOf(circuits);
        locations = List.copyOf(locations);
    }

    Job withSurroundings(Surroundings others) {
        return new Job(
                reference, title, customer, currency, supply, others, feeds, circuits, locations,
                choices);
    }

    /** The same machine with other circuits. */
    public Job withCircuits(List<Circuit> others) {
        return new Job(
                reference,
                title,
                customer,
                currency,
                supply,
                surroundings,
                feeds,
                others,
                locations,
                choices);
    }

    public Optional<Location> findLocation(String name) {
        for (Location location : locations) {
            if (location.name().equals(name)) {
                return Optional.of(location);
            }
        }
        return Optional.empty();
    }
}
