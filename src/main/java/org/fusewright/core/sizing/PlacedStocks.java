package org.fusewright.core.sizing;

import org.fusewright.core.job.Surroundings;
import org.fusewright.core.pricing.Stock;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Keeps what the parts of a stock do in the surroundings that jobs asked for last. A shop's jobs
 * share a few: the usual ones above all. Several threads may ask at once.
 */
public final class PlacedStocks {

    /** Each takes up to 100 KB. */
    private static final int MOST_SURROUNDINGS = 32;

    private final Stock stock;
    private final Map<Surroundings, PlacedStock> lastUsed =
            new LinkedHashMap<>(16, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<Surroundings, PlacedStock> eldest) {
                    return size() > MOST_SURROUNDINGS;
                }
            };

    private PlacedStocks(Stock stock) {
        this.stock = stock;
    }

    public static PlacedStocks of(Stock stock) {
        return new PlacedStocks(stock);
    }

    public Stock stock() {
        return stock;
    }

    synchronized PlacedStock in(Surroundings surroundings) {
        return lastUsed.computeIfAbsent(surroundings, place -> new PlacedStock(stock, place));
    }
}
