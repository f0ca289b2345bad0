package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Among equally good fillings of a location the one that leaves most items where they were: the
 * places are made fixed, as many of them at once as a filling of the same price allows.
 */
final class Keeping {

    /**
     * @param moved items that are not where they were, in the job's order
     */
    record Kept(Filling filling, List<String> moved) {}

    private static final long STEPS_A_TRY = 5_000;

    private Keeping() {}

    /** Another filling that is as good, of the same items with other places. */
    interface Refill {
        Optional<Filling> find(Site site, Budget budget);
    }

    /**
     * @param items with the places that they had
     * @param best filling when no place is kept but the fixed ones
     * @param asSite the items as a site, each with a place at that place
     */
    static Kept keep(
            List<FittingItem> items,
            Filling best,
            Function<List<FittingItem>, Site> asSite,
            Refill refill,
            long steps) {
        List<String> wired = items.stream().filter(Keeping::isWish).map(FittingItem::id).toList();
        if (wired.isEmpty()) {
            return new Kept(best, List.of());
        }
        Budget budget = new Budget(steps);
        return Subsets.findLargest(
                        wired,
                        kept -> {
                            List<FittingItem> held = hold(items, new HashSet<>(kept));
                            Site site = asSite.apply(held);
                            if (!site.table.hasFormForEachName()) {
                                return Optional.empty();
                            }
                            Budget part = budget.split(STEPS_A_TRY);
                            Optional<Filling> filling = refill.find(site, part);
                            budget.giveBack(part);
                            return filling.map(found -> new Kept(found, without(wired, kept)));
                        })
                .orElseGet(() -> new Kept(best, wired));
    }

    private static boolean isWish(FittingItem item) {
        return item.place().filter(place -> !place.fixed()).isPresent();
    }

    private static List<FittingItem> hold(List<FittingItem> items, Set<String> kept) {
        List<FittingItem> held = new ArrayList<>();
        for (FittingItem item : items) {
            boolean free = isWish(item) && !kept.contains(item.id());
            held.add(free ? item.withPlace(Optional.empty()) : item);
        }
        return held;
    }

    private static List<String> without(List<String> all, List<String> kept) {
        return all.stream().filter(id -> !kept.contains(id)).toList();
    }
}
