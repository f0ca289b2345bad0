package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Finds the arrangement that costs least where there is a {@link Discount}, and keeps what was
 * asked for last: like {@link KnownReasons} it follows from what needs room alone, from the
 * discount, and from the blocks that it starts from. Several threads may ask at once.
 */
public final class KnownDiscounts {

    /** For blocks in any number. */
    public static final int ANY_NUMBER = Integer.MAX_VALUE;

    private record Asked(Room room, List<Integer> known, int mostBlocks, List<Integer> discount) {}

    /** The lowest price found, and the bound that it was proven against. */
    private record Answer(long price, long bound) {}

    private final LastAsked<Asked, Answer> lastAsked = new LastAsked<>();

    /**
     * The cheapest arrangement after the discount, the known one when none is cheaper; with its
     * cost, and how far that is proven.
     *
     * @param task with the known arrangement
     * @param mostBlocks no arrangement of more blocks is wanted
     */
    public Arrangement find(SeatedTask task, int mostBlocks, Discount discount) {
        Arrangement known = task.arrangement();
        FittingTask placed = task.seated();
        int[] counts = counts(placed, known);
        int empty = Alternatives.free(known, task.whole());
        long price = DiscountedSearch.price(placed, counts, empty, discount);
        long saved = discount.micros(counts, empty);
        @Nullable Asked asked = asked(task, counts, mostBlocks, discount);
        @Nullable Answer answer = asked == null ? null : lastAsked.find(asked);
        if (answer != null && answer.price >= price) {
            return known.lessDiscount(saved, costAtLeast(placed, answer.bound));
        }
        // In order, so that the answer depends on nothing but what is asked.
        FittingTask searched = asked == null ? placed : Room.inOrder(placed);
        DiscountedSearch.Found found =
                DiscountedSearch.find(searched, counts, price, mostBlocks, discount);
        if (asked != null) {
            lastAsked.keep(asked, new Answer(found.price(), found.bound()));
        }
        long atLeast = costAtLeast(placed, found.bound());
        Optional<Arrangement> better =
                found.blocks().isEmpty()
                        ? Optional.empty()
                        : Fitter.arrange(task.whole(), found.blocks());
        if (better.isEmpty()) {
            return known.lessDiscount(saved, atLeast);
        }
        int[] others = counts(placed, better.get());
        int otherEmpty = Alternatives.free(better.get(), task.whole());
        return better.get().lessDiscount(discount.micros(others, otherEmpty), atLeast);
    }

    /** Null where places were named. */
    private static @Nullable Asked asked(
            SeatedTask task, int[] known, int mostBlocks, Discount discount) {
        if (task.room().isEmpty()) {
            return null;
        }
        List<Integer> counts = Arrays.stream(known).boxed().toList();
        return new Asked(task.room().get(), counts, mostBlocks, discount.key());
    }

    private static int[] counts(FittingTask task, Arrangement arrangement) {
        int[] counts = new int[task.forms().size()];
        for (PlacedBlock block : arrangement.blocks()) {
            for (int f = 0; f < counts.length; f++) {
                counts[f] += task.forms().get(f).isOfSameParts(block.form()) ? 1 : 0;
            }
        }
        return counts;
    }

    private static long costAtLeast(FittingTask task, long price) {
        return FormTable.Weights.of(task, Aim.LEAST_COST).costAtLeast(price, 0);
    }
}
