package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/** Which elements of a list can stay together when not all can. */
final class Subsets {

    /** Subsets looked at before elements are taken one by one. */
    private static final int MOST_TRIES = 2_000;

    private Subsets() {}

    /** The largest part of the list that passes; among equals the one that keeps the first. */
    static <T> List<T> largest(List<T> all, Predicate<List<T>> passes) {
        return findLargest(all, part -> passes.test(part) ? Optional.of(part) : Optional.empty())
                .orElse(List.of());
    }

    /**
     * What comes of the largest part of the list of which something comes. Beyond {@value
     * #MOST_TRIES} parts the elements are taken one by one as long as something comes of them,
     * which is no longer the largest for certain.
     */
    static <T, R> Optional<R> findLargest(List<T> all, Function<List<T>, Optional<R>> tried) {
        Search<T, R> search = new Search<>(all, tried);
        for (int left = 0; left <= all.size() && !search.isOver(); left++) {
            search.leaveOut(left, all.size() - 1, all);
        }
        return search.found.isPresent() ? search.found : search.oneByOne();
    }

    private static final class Search<T, R> {
        private final List<T> all;
        private final Function<List<T>, Optional<R>> tried;
        private int tries;
        private Optional<R> found = Optional.empty();

        Search(List<T> all, Function<List<T>, Optional<R>> tried) {
            this.all = all;
            this.tried = tried;
        }

        boolean isOver() {
            return found.isPresent() || tries >= MOST_TRIES;
        }

        /** Leaves out so many more, of those up to an index, the last ones first. */
        void leaveOut(int more, int upTo, List<T> rest) {
            if (more == 0) {
                tries++;
                found = tried.apply(rest);
                return;
            }
            for (int i = upTo; i >= more - 1 && !isOver(); i--) {
                List<T> fewer = new ArrayList<>(rest);
                fewer.remove(i);
                leaveOut(more - 1, i - 1, fewer);
            }
        }

        Optional<R> oneByOne() {
            List<T> kept = new ArrayList<>();
            Optional<R> best = tried.apply(kept);
            for (T one : all) {
                kept.add(one);
                Optional<R> next = tried.apply(List.copyOf(kept));
                if (next.isPresent()) {
                    best = next;
                } else {
                    kept.removeLast();
                }
            }
            return best;
        }
    }
}
